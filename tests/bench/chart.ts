import { fileURLToPath } from 'node:url'
import { chromium, type Page } from 'playwright-core'
import { build } from 'vite'
import { executablePath } from '../browser/harness.ts'
import type { ChartBench } from './chart-page.tsx'
import { median, millisecondsText, percentile, type Figure } from './figure.ts'

const slowdown = 4
const points = 100_000
const rounds = 4
const stepsInRound = 30

const files = async (): Promise<{ script: string; style: string }> => {
  const entry = fileURLToPath(new URL('chart-page.tsx', import.meta.url))
  const built = await build({
    configFile: false, logLevel: 'silent', oxc: { jsx: { runtime: 'automatic', importSource: 'preact' } }, define: { 'process.env.NODE_ENV': '"production"' },
    build: { write: false, cssMinify: false, lib: { entry, formats: ['iife'], name: 'chart' } },
  })
  const [first] = Array.isArray(built) ? built : [built]
  if (!first || !('output' in first)) throw new Error('the page was not built')
  return {
    script: first.output.map((file) => (file.type === 'chunk' ? file.code : '')).join('\n'),
    style: first.output.map((file) => (file.type === 'asset' && file.fileName.endsWith('.css') ? String(file.source) : '')).join('\n'),
  }
}

type Side = 'ours' | 'plain'
const first = (page: Page, side: Side): Promise<number> => page.evaluate((it) => (globalThis as unknown as { chartBench: ChartBench }).chartBench.first(it), side)
const steps = (page: Page, side: Side): Promise<number[]> =>
  page.evaluate(([it, count]) => (globalThis as unknown as { chartBench: ChartBench }).chartBench.steps(it, count), [side, stepsInRound] as const)

/** The control chart, with its limits, verdicts, rules and marks, beside a bare line of uPlot over the same hundred thousand readings, in turn. */
export const chartAgainstPlain = async (): Promise<Figure[]> => {
  const browser = await chromium.launch({ executablePath, headless: true, args: ['--no-sandbox', '--disable-gpu'] })
  try {
    const { script, style } = await files()
    const opened = async (): Promise<Page> => {
      const page = await browser.newPage({ viewport: { width: 360, height: 740 }, deviceScaleFactor: 2 })
      await page.setContent('<!doctype html><html lang="en"><body></body></html>')
      await page.addStyleTag({ content: style })
      await page.addScriptTag({ content: script })
      const session = await page.context().newCDPSession(page)
      await page.evaluate((count) => (globalThis as unknown as { chartBench: ChartBench }).chartBench.ready(count), points)
      await session.send('Emulation.setCPUThrottlingRate', { rate: slowdown })
      return page
    }
    const drawn: Record<Side, number[]> = { ours: [], plain: [] }
    const moved: Record<Side, number[]> = { ours: [], plain: [] }
    for (let round = 0; round < rounds; round++) {
      // A page of its own for each round, so that first drawings are first ones; the sides take turns in being first.
      const page = await opened()
      const order: readonly Side[] = round % 2 ? ['plain', 'ours'] : ['ours', 'plain']
      for (const side of order) drawn[side].push(await first(page, side))
      for (const side of order) moved[side].push(...(await steps(page, side)))
      await page.close()
    }
    const text = (times: readonly number[]): string => `p50 ${millisecondsText(median(times))}, p95 ${millisecondsText(percentile(times, 0.95))}`
    const figure = (what: string, times: Record<Side, number[]>, goal: string, isMet: boolean, note: string): Figure => ({
      what: `${what}, Chromium at ${slowdown}× CPU throttle`, figure: text(times.ours), against: `plain uPlot, ${text(times.plain)}`, ratio: median(times.ours) / median(times.plain), goal, isMet, note,
    })
    const smooth = percentile(moved.ours, 0.95)
    return [
      figure('control chart of 100,000 readings, a step of zoom or scroll', moved, 'p95 ≤ 50 ms', smooth <= 50, `${rounds * stepsInRound} steps each, in turn; main thread from change to paint, with limits, verdicts, rules and marks against a bare line`),
      figure('control chart of 100,000 readings, first drawing', drawn, '≤ 300 ms', median(drawn.ours) <= 300, `${rounds} pages`),
    ]
  } finally {
    await browser.close()
  }
}
