import type { ComponentChildren } from 'preact'
import { useMemo, useRef } from 'preact/hooks'
import type { Verdict } from '../../plan/limits.ts'
import type { SeriesEvent } from '../../projections/series.ts'
import { chartHeight, useWidth } from '../use-width.ts'
import { EventMarks } from './event-marks.tsx'
import { indexAt, thin } from './thin.ts'
import { timeTicks } from './time-ticks.ts'
import { useChartTouch } from './use-chart-touch.ts'
import type { Window } from './window.ts'
import './control-chart.css'

/** NaN where there is nothing to draw. */
export type Numbers = ArrayLike<number>

export interface ChartLimit {
  at: number
  kind: 'action' | 'warning' | 'aim' | 'computed'
}

/** What is drawn: one or two lines over time, what they are held against, and what is marked on them. */
export interface ChartPicture {
  times: Numbers
  /** The first bears the points; the others are thinner or dashed. */
  lines: readonly { values: Numbers; kind: 'main' | 'second' | 'limit' }[]
  limits: readonly ChartLimit[]
  /** Of each point of the first line, and of the second where there is one. */
  verdictAt(index: number, line: number): Verdict
  /** Points on which a rule is broken, in order: `what` stands beside them where there is room. */
  flags: readonly { index: number; what: string }[]
  /** A drift carried on: from a point to where it meets a limit, early and late. */
  ahead?: { from: readonly [time: number, value: number]; limit: number; at: number; earliest: number; latest: number } | undefined
}

interface ControlChartProps {
  picture: ChartPicture
  events: readonly SeriesEvent[]
  extent: Window
  window: Window
  chosen: number
  name: string
  timeZone: string
  language: string
  text(value: number): string
  onWindow(window: Window): void
  onChoose(index: number): void
}

const inset = { left: 42, right: 10, top: 14, bottom: 36 }
/** Nearer than this, labels of two lines would run into each other. */
const labelHeight = 12
/** More points than this are a line, and only what is out is marked. */
const mostApart = 150
/** More flags than this are ticks along the top edge. */
const mostRings = 40

/** Values over time in the window that is seen. Points differ by shape as well as by colour; the table beside it says the same. */
export const ControlChart = ({ picture, events, extent, window, chosen, name, timeZone, language, text, onWindow, onChoose }: ControlChartProps) => {
  const svg = useRef<SVGSVGElement>(null)
  const width = useWidth(svg)
  const height = chartHeight(width, { least: 230 })
  const right = width - inset.right
  const bottom = height - inset.bottom
  const span = Math.max(1, window.to - window.from)
  const x = (time: number): number => inset.left + ((time - window.from) / span) * (right - inset.left)
  const touch = useChartTouch({ svg, times: picture.times, window, extent, left: inset.left, right, width, onWindow, onChoose })

  const drawn = useMemo(() => draw(picture, window, { width, height }, x), [picture, window.from, window.to, width])
  const { y } = drawn
  const main = picture.lines[0]!.values
  const at = picture.times[chosen]
  const value = main[chosen]
  const body = useMemo(
    () => (
      <>
        <rect class="frame" x={inset.left} y={inset.top} width={right - inset.left} height={bottom - inset.top} />
        {timeTicks({ ...window, timeZone, language, most: Math.max(3, Math.floor(width / 80)) }).map((tick) => (
          <g key={tick.at}>
            <line class="tick" x1={x(tick.at)} x2={x(tick.at)} y1={inset.top} y2={bottom} />
            <text x={Math.min(right - 14, Math.max(inset.left + 14, x(tick.at)))} y={height - 4} text-anchor="middle">{tick.text}</text>
          </g>
        ))}
        {picture.limits.map((limit) => <line key={`${limit.kind} ${limit.at}`} class={`limit ${limit.kind}`} x1={inset.left} x2={right} y1={y(limit.at)} y2={y(limit.at)} />)}
        {labelsOf(picture.limits, y, text, drawn.range).map((label) => <text key={label.y} x={inset.left - 4} y={label.y + 4} text-anchor="end">{label.text}</text>)}
        <EventMarks events={events} window={window} x={x} top={inset.top} bottom={bottom} />
        <clipPath id="plot"><rect x={inset.left} y={inset.top - 8} width={right - inset.left} height={bottom - inset.top + 16} /></clipPath>
        <g clip-path="url(#plot)">{drawn.shapes}</g>
      </>
    ),
    [drawn, events, timeZone],
  )
  return (
    <svg ref={svg} class="control-chart" viewBox={`0 0 ${width} ${height}`} height={height} role="img" aria-label={name} {...touch}>
      {body}
      {at !== undefined && value !== undefined && at >= window.from && at <= window.to ? (
        <g class="cursor">
          <line class="ray" x1={x(at)} x2={x(at)} y1={inset.top} y2={bottom} />
          {Number.isNaN(value) ? null : <circle class="chosen" cx={x(at)} cy={y(value)} r="8" />}
        </g>
      ) : null}
    </svg>
  )
}

interface Drawn {
  range: { low: number; high: number }
  y(value: number): number
  shapes: ComponentChildren
}

/** Everything that depends on the window and not on the thumb. */
const draw = (picture: ChartPicture, window: Window, size: { width: number; height: number }, x: (time: number) => number): Drawn => {
  const { times, lines, limits, flags, verdictAt, ahead } = picture
  const columns = Math.max(1, size.width - inset.left - inset.right)
  const kept = lines.map(({ values }) => thin({ times, values, ...window, columns }))
  const isAheadSeen = ahead !== undefined && ahead.from[0] <= window.to && ahead.at >= window.from
  let low = Number.POSITIVE_INFINITY
  let high = Number.NEGATIVE_INFINITY
  const take = (value: number): void => {
    if (value < low) low = value
    if (value > high) high = value
  }
  lines.forEach(({ values }, line) => {
    for (const index of kept[line]!) take(values[index]!)
  })
  for (const { at } of limits) take(at)
  if (isAheadSeen) take(ahead.limit)
  if (low > high) [low, high] = [0, 1]
  const pad = (high - low || Math.abs(high) || 1) * 0.07
  const top = high + pad
  const tall = high - low + 2 * pad
  const y = (value: number): number => inset.top + ((top - value) / tall) * (size.height - inset.top - inset.bottom)

  const main = lines[0]!.values
  const first = indexAt(times, window.from)
  const end = indexAt(times, window.to + 1)
  const areApart = end - first <= mostApart
  const seenFlags = flags.slice(indexOfFlag(flags, first), indexOfFlag(flags, end))
  const marks: Record<Verdict, string> = { IN: '', WARN: '', ACT: '' }
  lines.forEach(({ values, kind }, line) => {
    if (kind === 'limit') return
    const found = pointMarks({ times, values, from: first, to: end, verdictAt: (index) => verdictAt(index, line), areApart: areApart && kind === 'main', x, y })
    for (const verdict of ['IN', 'WARN', 'ACT'] as const) marks[verdict] += found[verdict]
  })
  return {
    range: { low, high },
    y,
    shapes: (
      <>
        {lines.map(({ values, kind }, line) => <path key={line} class={`line ${kind}`} d={lineOf(kept[line]!, times, values, x, y)} />)}
        {isAheadSeen ? <Ahead ahead={ahead} x={x} y={y} /> : null}
        {marks.IN ? <path class="point IN" d={marks.IN} /> : null}
        {marks.WARN ? <path class="point WARN" d={marks.WARN} /> : null}
        {marks.ACT ? <path class="point ACT" d={marks.ACT} /> : null}
        {seenFlags.length <= mostRings ? (
          <>
            {seenFlags.map(({ index }) => <circle key={index} class="flag" cx={x(times[index]!)} cy={y(main[index]!)} r="6" />)}
            {flagLabels(seenFlags, (index) => x(times[index]!)).map(({ index, what }) => (
              <text key={index} class="flag" x={Math.min(size.width - inset.right - 3 * what.length, x(times[index]!))} y={y(main[index]!) < inset.top + 22 ? y(main[index]!) + 18 : y(main[index]!) - 10} text-anchor="middle">{what}</text>
            ))}
          </>
        ) : (
          <path class="flag-ticks" d={ticksOf(seenFlags.map(({ index }) => x(times[index]!)))} />
        )}
      </>
    ),
  }
}

const lineOf = (kept: readonly number[], times: Numbers, values: Numbers, x: (time: number) => number, y: (value: number) => number): string => {
  let path = ''
  let isOpen = false
  for (const index of kept) {
    const value = values[index]!
    if (Number.isNaN(value)) {
      isOpen = false
      continue
    }
    path += `${isOpen ? 'L' : 'M'}${x(times[index]!).toFixed(1)} ${y(value).toFixed(1)}`
    isOpen = true
  }
  return path
}

interface PointsAsked {
  times: Numbers
  values: Numbers
  from: number
  to: number
  verdictAt(index: number): Verdict
  /** Room for every point; else only those out of limits, one to a column and verdict. */
  areApart: boolean
  x(time: number): number
  y(value: number): number
}

const pointMarks = ({ times, values, from, to, verdictAt, areApart, x, y }: PointsAsked): Record<Verdict, string> => {
  const marks: Record<Verdict, string> = { IN: '', WARN: '', ACT: '' }
  const taken = new Set<string>()
  for (let index = from; index < to; index++) {
    const value = values[index]!
    const verdict = verdictAt(index)
    if (Number.isNaN(value) || (verdict === 'IN' && !areApart)) continue
    const [left, top] = [x(times[index]!), y(value)]
    if (!areApart) {
      const place = `${verdict}${Math.round(left / 3)} ${Math.round(top / 3)}`
      if (taken.has(place)) continue
      taken.add(place)
    }
    const at = `${left.toFixed(1)} ${top.toFixed(1)}`
    marks[verdict] += verdict === 'ACT' ? `M${at}m-4 -4h8v8h-8z` : verdict === 'WARN' ? `M${at}m-4 3.5h8l-4 -8z` : `M${at}m-2.5 0a2.5 2.5 0 1 0 5 0a2.5 2.5 0 1 0 -5 0`
  }
  return marks
}

const indexOfFlag = (flags: ChartPicture['flags'], index: number): number => {
  const found = flags.findIndex((flag) => flag.index >= index)
  return found < 0 ? flags.length : found
}

/** The labels that find room: the later of two that would touch is left out, its words stand below the chart. */
const flagLabels = (flags: ChartPicture['flags'], x: (index: number) => number): ChartPicture['flags'] => {
  let right = Number.NEGATIVE_INFINITY
  return flags.filter(({ index, what }) => {
    const half = what.length * 3.5 + 2
    if (x(index) - half < right) return false
    right = x(index) + half
    return true
  })
}

const ticksOf = (places: readonly number[]): string => [...new Set(places.map((place) => Math.round(place)))].map((place) => `M${place} ${inset.top - 7}l-3 -5h6z`).join('')

/** Labels of the lines, the outer ones first, none over another. */
const labelsOf = (limits: readonly ChartLimit[], y: (value: number) => number, text: (value: number) => string, range: { low: number; high: number }): { y: number; text: string }[] => {
  const rank = { action: 0, computed: 0, aim: 1, warning: 2 } as const
  const wanted = limits.length > 1 ? [...limits].sort((a, b) => rank[a.kind] - rank[b.kind]).map(({ at }) => at) : [...limits.map(({ at }) => at), range.low, range.high]
  const labels: { y: number; text: string }[] = []
  for (const value of wanted) {
    const at = y(value)
    if (labels.every((label) => Math.abs(label.y - at) >= labelHeight)) labels.push({ y: at, text: text(value) })
  }
  return labels
}

const Ahead = ({ ahead, x, y }: { ahead: NonNullable<ChartPicture['ahead']>; x(time: number): number; y(value: number): number }) => {
  const [time, value] = ahead.from
  const at = y(ahead.limit)
  return (
    <g class="ahead">
      <path class="band" d={`M${x(time)} ${y(value)}L${x(Math.max(time, ahead.earliest))} ${at}L${x(ahead.latest)} ${at}z`} />
      <path class="way" d={`M${x(time)} ${y(value)}L${x(ahead.at)} ${at}`} />
      <path class="meets" d={`M${x(Math.max(time, ahead.earliest))} ${at - 5}v10M${x(ahead.latest)} ${at - 5}v10M${x(Math.max(time, ahead.earliest))} ${at}H${x(ahead.latest)}`} />
      <path class="meets" d={`M${x(ahead.at)} ${at}m-5 0l5 -5l5 5l-5 5z`} />
    </g>
  )
}
