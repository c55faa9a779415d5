import type { Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { violationsInBothThemes } from './axe.ts'
import { found, goTo, Laboratory, Phone, saveReading } from './harness.ts'
import { clipped, drawn, numberContrasts, smallTargets, zoomingFields } from './measures.ts'
import { screens } from './screens.ts'

/** WCAG 2.2: 1.4.6, contrast (enhanced). */
const enhanced = 7
/** Above the 24 of WCAG 2.2, 2.5.8: a gloved thumb. */
const leastTarget = 48

describe('every screen', () => {
  const lab = new Laboratory()
  let phone: Phone
  let page: Page
  let exception = ''

  /** What is wrong on each screen; nothing on those that are right. */
  const onEach = async (paths: readonly string[], look: (path: string) => Promise<string[]>): Promise<Record<string, string[]>> => {
    const wrong: Record<string, string[]> = {}
    for (const path of paths) {
      await goTo(page, path)
      await drawn(page)
      const problems = await look(path)
      if (problems.length) wrong[path] = problems
    }
    return wrong
  }

  beforeAll(async () => {
    await lab.start()
    phone = new Phone(lab.origin)
    page = await phone.open(`/#enrol=${lab.code}`)
    await found(page, 'Rosa Kern')
    for (const digits of ['4.92', '4.92']) {
      await saveReading(page, digits, 'neg-1-fix-ph')
      await goTo(page, '/now')
    }
    await goTo(page, '/shift')
    exception = (await page.locator('a[href^="/exception/"]').last().getAttribute('href')) ?? ''
  })
  afterAll(async () => {
    await phone.end()
    await lab.end()
  })

  it('reads well for everybody in both themes, and a gloved thumb hits everything on it', { timeout: 400_000 }, async () => {
    const wrong = await onEach([...screens, exception], async () => [...(await violationsInBothThemes(page)), ...(await smallTargets(page, leastTarget)), ...(await zoomingFields(page)), ...(await clipped(page))])
    expect(wrong).toEqual({})
  })

  it('shows numbers with the contrast that is read from afar', async () => {
    const seen: number[] = []
    for (const path of ['/check/neg-1-fix-ph', '/trends/neg-1-fix-ph', '/response/neg-1-fix', '/splice/neg-1', exception]) {
      await goTo(page, path)
      await drawn(page)
      for (const theme of ['paper', 'safelight']) {
        await page.evaluate((it) => (document.documentElement.dataset['theme'] = it), theme)
        const numbers = await numberContrasts(page)
        expect(numbers.filter(({ ratio }) => ratio < enhanced).map(({ what, ratio }) => `${path}, ${theme}: ${what} ${ratio.toFixed(2)}`)).toEqual([])
        seen.push(numbers.length)
      }
      await page.evaluate(() => (document.documentElement.dataset['theme'] = 'paper'))
    }
    expect(Math.min(...seen)).toBeGreaterThan(0)
  })

  it('has number keys of 64 px at least, 8 px apart', async () => {
    for (const path of ['/check/neg-1-fix-ph', '/check/neg-1-dev-temp', '/check/neg-1-strip']) {
      await goTo(page, path)
      await drawn(page)
      const boxes = await page.getByRole('group', { name: 'Number pad' }).getByRole('button').evaluateAll((keys) => keys.map((key) => (({ left, right, top, bottom }) => ({ left, right, top, bottom }))(key.getBoundingClientRect())))
      expect(boxes.length).toBeGreaterThanOrEqual(11)
      for (const [index, one] of boxes.entries()) {
        expect([one.right - one.left, one.bottom - one.top].every((side) => side >= 63.9), `${path} key ${index}`).toBe(true)
        for (const other of boxes.slice(index + 1)) {
          const gap = Math.max(other.left - one.right, one.left - other.right, other.top - one.bottom, one.top - other.bottom)
          expect(gap, `${path} keys ${index}`).toBeGreaterThanOrEqual(7.9)
        }
      }
    }
  })

  it('opens a tank label that a hand scanner types, and no figure of it reaches the pad', async () => {
    await goTo(page, '/check/neg-1-dev-temp')
    await drawn(page)
    await page.keyboard.type(`${lab.origin}/at/1/check/neg-1-fix-ph`)
    expect(await page.locator('output.keyed').innerText()).toBe('')
    await page.keyboard.press('Enter')
    await page.getByRole('heading', { name: 'Fixing bath pH', level: 1 }).waitFor()
  })

  it('stands still while the font and the screens’ own code arrive', async () => {
    await page.route(/\.woff2$|assets\/(round|station)-.*\.js$/, async (route) => {
      await new Promise((done) => setTimeout(done, 400))
      await route.continue()
    })
    await page.addInitScript(() => {
      const moved: string[] = []
      Object.assign(globalThis, { moved })
      new PerformanceObserver((list) => {
        for (const entry of list.getEntries() as (PerformanceEntry & { value: number; hadRecentInput: boolean; sources: { node?: Node }[] })[])
          if (!entry.hadRecentInput) moved.push(`${entry.value.toFixed(3)} ${entry.sources.map(({ node }) => (node instanceof Element ? node.outerHTML.slice(0, 60) : '')).join(' ')}`)
      }).observe({ type: 'layout-shift', buffered: true })
    })
    await page.reload()
    await page.getByRole('button', { name: 'Rosa Kern' }).waitFor()
    await page.evaluate(() => document.fonts.ready)
    await page.waitForFunction(() => document.fonts.check('16px "Atkinson Hyperlegible Next"'))
    const moved = await page.evaluate(() => (globalThis as unknown as { moved: string[] }).moved)
    expect(moved.filter((it) => Number(it.split(' ')[0]) > 0.01)).toEqual([])
    await page.unroute(/\.woff2$|assets\/(round|station)-.*\.js$/)
  })

  it('broke no content policy and failed nowhere', () => {
    expect(phone.complaints).toEqual([])
  })
})

describe('every screen at twice the size of text', () => {
  const lab = new Laboratory()
  let phone: Phone
  let page: Page

  beforeAll(async () => {
    await lab.start()
    phone = new Phone(lab.origin)
    page = await phone.open(`/#enrol=${lab.code}`)
    await found(page, 'Rosa Kern')
  })
  afterAll(async () => {
    await phone.end()
    await lab.end()
  })

  it.each(['English', 'Español'])('cuts nothing off and is no wider than the phone, in %s', { timeout: 240_000 }, async (language) => {
    await goTo(page, '/menu')
    await page.getByRole('radio', { name: language }).check()
    await page.waitForFunction((to) => document.documentElement.lang === to, language === 'English' ? 'en' : 'es')
    await page.evaluate(() => (document.documentElement.style.fontSize = '200%'))
    const wrong: Record<string, string[]> = {}
    for (const path of screens) {
      await goTo(page, path)
      await drawn(page)
      const problems = await clipped(page)
      if (problems.length) wrong[path] = problems
    }
    expect(wrong).toEqual({})
  })

  it('moves nothing for whoever wants nothing to move', async () => {
    await page.emulateMedia({ reducedMotion: 'reduce' })
    for (const path of ['/now', '/check/neg-1-fix-ph', '/splice/neg-1', '/safety/acetic-acid-28']) {
      await goTo(page, path)
      await drawn(page)
      const moving = await page.evaluate(() =>
        [...document.querySelectorAll('*')].filter((it) => {
          const { animationDuration, transitionDuration } = getComputedStyle(it)
          return [animationDuration, transitionDuration].some((text) => text.split(',').some((each) => parseFloat(each) > 0.001))
        }).map((it) => it.outerHTML.slice(0, 80)),
      )
      expect(moving, path).toEqual([])
    }
  })
})
