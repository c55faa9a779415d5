import 'temporal-polyfill/global'
import { h, render } from 'preact'
import uPlot from 'uplot'
import { controlChart, mostAnalysed } from '../../src/projections/control-chart.ts'
import type { SeriesEvent, SeriesPoint } from '../../src/projections/series.ts'
import { judge } from '../../src/plan/limits.ts'
import { ControlChart, type ChartPicture } from '../../src/ui/trends/control-chart.tsx'
import { chartPicture } from '../../src/ui/trends/pictures.ts'
import type { Window } from '../../src/ui/trends/window.ts'

/** Main-thread milliseconds of each step: the change, its style, layout and paint; waiting for the screen's next beat is not in it. */
export interface ChartBench {
  ready(count: number): void
  first(side: 'ours' | 'plain'): Promise<number>
  steps(side: 'ours' | 'plain', count: number): Promise<number[]>
}

const minute = 60_000
const start = Date.parse('2020-01-06T06:00:00Z')
const [width, height] = [328, 230]
const limits = { aim: 4.5, warningLow: 4.35, warningHigh: 4.65, actionLow: 4.2, actionHigh: 4.8 }

let points: SeriesPoint[] = []
let picture: ChartPicture
let events: SeriesEvent[] = []
let plot: uPlot | undefined
let boxes: Record<'ours' | 'plain', HTMLElement>

/** A bath that wanders about its aim, read each half hour; now and then it is far out. */
const history = (count: number): SeriesPoint[] => {
  let [state, drift] = [1, 0]
  const random = (): number => (state = (state * 48_271) % 2_147_483_647) / 2_147_483_647
  return Array.from({ length: count }, (_, index) => {
    drift = 0.995 * drift + 0.02 * (random() - 0.5)
    const value = Math.round((4.5 + drift + 0.08 * (random() - 0.5) + (random() < 0.0005 ? 0.5 : 0)) * 100) / 100
    return { id: String(index) as never, time: start + index * 30 * minute, value, keyed: value.toFixed(2), verdict: judge(limits, value).verdict }
  })
}

/** From everything to a day, back again, and along: what a thumb does. */
const windowAt = (step: number, count: number): Window => {
  const [from, to] = [points[0]!.time, points.at(-1)!.time]
  const whole = to - from
  const share = step / count
  const span = share < 0.5 ? whole * 0.0005 ** (share * 2) : whole * 0.1
  const middle = share < 0.5 ? from + whole * 0.6 : from + whole * (0.1 + (share - 0.5) * 1.6)
  return { from: Math.max(from, middle - span / 2), to: Math.min(to, middle + span / 2) }
}

const draw = (window: Window): void =>
  render(
    h(ControlChart, {
      picture, events, extent: { from: points[0]!.time, to: points.at(-1)!.time }, window, chosen: points.length - 1, name: 'bench', timeZone: 'Europe/Lisbon', language: 'en', text: (value: number) => value.toFixed(2),
      onWindow: () => undefined, onChoose: () => undefined,
    }),
    boxes.ours,
  )

const plain = (): uPlot =>
  new uPlot(
    { width, height, legend: { show: false }, cursor: { show: false }, series: [{}, { stroke: '#000', width: 1.5 }], scales: { x: { time: true } } },
    [points.map(({ time }) => time / 1000), points.map(({ value }) => value)],
    boxes.plain,
  )

/** From the beginning of a frame, through the change, to after its paint. */
const frame = (change: () => void): Promise<number> =>
  new Promise((done) => {
    requestAnimationFrame(() => {
      const began = performance.now()
      change()
      const channel = new MessageChannel()
      channel.port1.onmessage = () => done(performance.now() - began)
      channel.port2.postMessage(0)
    })
  })

const bench: ChartBench = {
  ready: (count) => {
    const box = (): HTMLElement => {
      const made = document.createElement('div')
      made.style.width = `${width}px`
      document.body.append(made)
      return made
    }
    boxes = { ours: box(), plain: box() }
    points = history(count)
    events = Array.from({ length: 400 }, (_, index) => ({ kind: 'add' as const, time: start + index * 125 * 60 * minute, material: 'water', text: '1 L' }))
    const newest = points.slice(-mostAnalysed)
    const charted = controlChart({ values: newest.map(({ value }) => value), gapsBefore: [], limits: { by: 'plan', plan: limits } })
    picture = chartPicture('readings', { points, limits, by: 'plan', analysis: charted && { charted, offset: points.length - newest.length }, forecast: undefined })
  },
  first: (side) =>
    frame(() => {
      if (side === 'ours') draw(windowAt(0, 1))
      else plot = plain()
    }),
  steps: async (side, count) => {
    const times: number[] = []
    for (let step = 0; step < count; step++) {
      const window = windowAt(step, count)
      times.push(await frame(() => (side === 'ours' ? draw(window) : plot!.setScale('x', { min: window.from / 1000, max: window.to / 1000 }))))
    }
    return times
  },
}
Object.assign(globalThis, { chartBench: bench })
