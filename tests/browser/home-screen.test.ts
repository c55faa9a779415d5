import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { enrol } from '../../src/ui/words/en/enrol.ts'
import { menu } from '../../src/ui/words/en/menu.ts'
import { shell } from '../../src/ui/words/en/shell.ts'
import { phoneOf, type AnyPhone } from './engines/phone-of.ts'
import type { Screen } from './engines/screen.ts'
import { found, goTo, Laboratory } from './harness.ts'

/** As Safari of an iPhone says whether a page was opened from the home screen; other browsers have no such word. From memory. */
const opened = (fromHomeScreen: boolean): void => {
  Object.defineProperty(Navigator.prototype, 'standalone', { get: () => fromHomeScreen })
}

describe('a phone whose home screen keeps a store of its own', () => {
  const lab = new Laboratory()
  let browser: AnyPhone
  let homeScreen: AnyPhone

  beforeAll(async () => {
    await lab.start()
    browser = phoneOf(lab.origin)
    browser.before(opened, false)
    homeScreen = phoneOf(lab.origin)
    homeScreen.before(opened, true)
  })
  afterAll(async () => {
    await browser.end()
    await homeScreen.end()
    await lab.end()
  })

  const seen = (page: Screen, name: string): Promise<unknown> => (process.env['SHOTS'] ? page.screenshot({ path: `${process.env['SHOTS']}/${name}.png` }) : Promise.resolve())

  it('in its browser is told to put the app there first, how, and what is lost otherwise', async () => {
    const page = await browser.open('/setup')
    await page.getByText(menu.setup.home.find((it) => /^iPhone/.test(it))!).waitFor()
    await page.getByText(menu.phone.checks.installed.without).waitFor()
    await seen(page, 'setup-in-the-browser')
    await page.goto(`${lab.origin}/#enrol=${lab.code}`)
    await page.getByText(enrol.homeFirst).waitFor()
    expect(await page.getByText(enrol.homeFirstMore).isVisible()).toBe(true)
    await seen(page, 'enrol-in-the-browser')
    // A warning, no bar: whoever has no home screen to put it on may go on.
    expect(await page.getByLabel('Code').evaluate((it) => (it as HTMLInputElement).value)).toBe(lab.code)
    expect(await page.getByRole('button', { name: 'Go on' }).getAttribute('aria-disabled')).not.toBe('true')
  })

  it('from its home screen is asked for the code at once, is enrolled, and knows that it stands there', async () => {
    const page = await homeScreen.open(`/#enrol=${lab.code}`)
    await page.getByLabel('Code').waitFor()
    expect(await page.getByText(enrol.homeFirst).count()).toBe(0)
    // Nothing of it sticks to the edge, and the way to the emergency card is as large as a thumb.
    expect((await page.getByRole('heading', { level: 1 }).boundingBox())!.x).toBeGreaterThanOrEqual(12)
    expect((await page.getByRole('link', { name: shell.emergency }).boundingBox())!.width).toBeGreaterThanOrEqual(48)
    await seen(page, 'enrol-from-the-home-screen')
    await found(page, 'Rosa Kern')
    await goTo(page, '/menu/phone')
    await page.getByText(menu.phone.checks.installed.name, { exact: true }).waitFor()
    expect(await page.getByText(menu.phone.checks.installed.without).count()).toBe(0)
    expect(await page.getByText(menu.install.title).count()).toBe(0)
    await seen(page, 'phone-from-the-home-screen')
  })

  it('broke no content policy and failed nowhere', () => {
    expect([...browser.complaints, ...homeScreen.complaints]).toEqual([])
  })
})
