import { readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import type { AxeResults, RunOptions } from 'axe-core'
import type { Page } from 'playwright-core'

const axeSource = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8')

/** What axe finds on the page as it stands, each with where. Its measure of targets takes a row that is half under the bar at the foot for a small one; a stricter test of our own measures the whole. */
export const violations = async (page: Page): Promise<string[]> => {
  await page.evaluate(axeSource)
  const results = await page.evaluate(async () => {
    const { axe } = globalThis as unknown as { axe: { run(options: RunOptions): Promise<AxeResults> } }
    return axe.run({ runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'], rules: { 'target-size': { enabled: false } } })
  })
  return results.violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html.slice(0, 160)).join(' … ')}`)
}

export const violationsInBothThemes = async (page: Page): Promise<string[]> => {
  const found: string[] = []
  const before = await page.evaluate(() => document.documentElement.dataset['theme'])
  for (const theme of ['paper', 'safelight']) {
    await page.evaluate((it) => (document.documentElement.dataset['theme'] = it), theme)
    for (const it of await violations(page)) found.push(`${theme}: ${it}`)
  }
  await page.evaluate((it) => (document.documentElement.dataset['theme'] = it ?? ''), before)
  return found
}
