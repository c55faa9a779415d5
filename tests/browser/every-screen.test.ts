import { mkdirSync } from 'node:fs'
import type { Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { violations } from './axe.ts'
import { found, goTo, keyIn, Laboratory, Phone, press } from './harness.ts'

/** Where to leave pictures of what was looked at, for people. */
const pictures = process.env['SHOTS']

const screens = [
  '/now', '/machine/neg-1', '/station/neg-1-dev', '/station/neg-1-fix', '/round', '/check/neg-1-dev-temp', '/check/neg-1-fix-ph', '/bench', '/bench/acidBase.dose', '/bench/bath.correct',
  '/trends', '/trends/neg-1-fix-ph', '/shift', '/record', '/board', '/menu', '/menu/plan', '/menu/labels', '/scan', '/mixing', '/mixing/begin/negative-developer', '/waste', '/waste/new', '/response/neg-1-fix', '/splice/neg-1', '/at/1/station/none', '/menu/devices', '/menu/phone', '/emergency', '/emergency/eyes', '/safety', '/safety/acetic-acid-28', '/setup', '/nowhere',
] as const

/** What a thumb cannot hit: links and buttons of less than 44 px either way that stand alone. */
const smallTargets = (page: Page): Promise<string[]> =>
  page.evaluate(() =>
    [...document.querySelectorAll<HTMLElement>('main button, main a, header button, header a, nav a')]
      .filter((it) => it.offsetParent !== null && getComputedStyle(it).display !== 'inline')
      .filter((it) => {
        const { width, height } = it.getBoundingClientRect()
        return width < 44 || height < 44
      })
      .map((it) => `${it.outerHTML.slice(0, 120)} ${Math.round(it.getBoundingClientRect().width)}×${Math.round(it.getBoundingClientRect().height)}`),
  )

/** What an iPhone would zoom in on when it is tapped, and not zoom out of: fields of less than 16 px type. */
const zoomingFields = (page: Page): Promise<string[]> =>
  page.evaluate(() =>
    [...document.querySelectorAll<HTMLElement>('input, textarea, select')]
      .filter((it) => !['file', 'radio', 'checkbox', 'range'].includes((it as HTMLInputElement).type) && parseFloat(getComputedStyle(it).fontSize) < 16)
      .map((it) => `${it.outerHTML.slice(0, 120)} ${getComputedStyle(it).fontSize}`),
  )

describe('every screen', () => {
  const lab = new Laboratory()
  let phone: Phone
  let page: Page
  let exception = ''

  beforeAll(async () => {
    if (pictures) mkdirSync(pictures, { recursive: true })
    await lab.start()
    phone = new Phone(lab.origin)
    page = await phone.open(`/#enrol=${lab.code}`)
    await found(page, 'Rosa Kern')
    for (const digits of ['4.92', '4.92']) {
      await goTo(page, '/check/neg-1-fix-ph')
      await keyIn(page, digits)
      await press(page, 'Save reading')
      const keep = page.getByRole('button', { name: /^Keep / })
      const saved = page.getByText('Saved on this phone')
      await keep.or(saved).first().waitFor()
      if (await keep.isVisible()) await keep.click()
      await saved.waitFor()
      await goTo(page, '/now')
    }
    await goTo(page, '/shift')
    exception = (await page.locator('a[href^="/exception/"]').last().getAttribute('href')) ?? ''
  })
  afterAll(async () => {
    await phone.end()
    await lab.end()
  })

  it.each(['paper', 'safelight'])('reads well for everybody, in %s', async (theme) => {
    await goTo(page, '/menu')
    await page.getByRole('radio', { name: theme === 'paper' ? /Paper/ : /Safelight/ }).check()
    const found: Record<string, string[]> = {}
    for (const path of [...screens, exception]) {
      await goTo(page, path)
      await page.locator('main').waitFor()
      await page.waitForTimeout(350)
      if (pictures) await page.screenshot({ path: `${pictures}/${theme}-${path.replaceAll('/', '_')}.png` })
      const wide = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth)
      const problems = [...(await violations(page)), ...(await smallTargets(page)), ...(await zoomingFields(page)), ...(wide > 0 ? [`${wide} px too wide`] : [])]
      if (problems.length) found[path] = problems
    }
    expect(found).toEqual({})
  })

  it('broke no content policy and failed nowhere', () => {
    expect(phone.complaints).toEqual([])
  })
})
