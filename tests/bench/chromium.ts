import { fileURLToPath } from 'node:url'
import { chromium } from 'playwright-core'
import { build } from 'vite'
import { executablePath } from '../browser/harness.ts'
import { millisecondsText, percentile, type Figure } from './figure.ts'
import type { BenchPage } from './page.ts'

const slowdown = 4

const script = async (): Promise<string> => {
  const entry = fileURLToPath(new URL('page.ts', import.meta.url))
  const built = await build({ configFile: false, logLevel: 'silent', build: { write: false, lib: { entry, formats: ['iife'], name: 'bench' } } })
  const [first] = Array.isArray(built) ? built : [built]
  if (!first || !('output' in first)) throw new Error('the page was not built')
  return first.output.map((file) => (file.type === 'chunk' ? file.code : '')).join('\n')
}

/** The two calculations that somebody waits for at the tank, in a browser slowed to a quarter. */
export const calculationsInChromium = async (calls = 200): Promise<Figure[]> => {
  const browser = await chromium.launch({ executablePath, headless: true, args: ['--no-sandbox', '--disable-gpu'] })
  try {
    const page = await browser.newPage()
    await page.addScriptTag({ content: await script() })
    const session = await page.context().newCDPSession(page)
    await session.send('Emulation.setCPUThrottlingRate', { rate: slowdown })
    const times = (work: keyof BenchPage): Promise<number[]> =>
      page.evaluate(([name, count]) => (globalThis as unknown as { benchPage: BenchPage }).benchPage[name](count), [work, calls] as const)
    const figure = async (what: string, work: keyof BenchPage, most: number): Promise<Figure> => {
      const all = await times(work)
      const [half, slow] = [percentile(all, 0.5), percentile(all, 0.95)]
      return {
        what: `${what}, Chromium at ${slowdown}× CPU throttle`, figure: `p50 ${millisecondsText(half)}, p95 ${millisecondsText(slow)}`, against: '', ratio: null,
        goal: `p95 ≤ ${most} ms`, isMet: slow <= most, note: `${calls} calls, the first ones counted`,
      }
    }
    return [
      await figure('`bath.correct`, 8 constituents, 10 materials', 'correct', 20),
      await figure('`acidBase.dose`, fixing bath', 'dose', 5),
    ]
  } finally {
    await browser.close()
  }
}
