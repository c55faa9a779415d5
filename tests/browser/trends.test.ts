import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { phoneOf, type AnyPhone } from './engines/phone-of.ts'
import type { Screen } from './engines/screen.ts'
import { found, goTo, holdLine, Laboratory, press, readyForNoNetwork, saveReading, unlock } from './harness.ts'

const operator = 'Marta Quintela'
const chart = (page: Screen) => page.locator('svg.control-chart[role="img"]')
const readout = async (page: Screen): Promise<string> => (await page.locator('.chart-readout strong').innerText()).trim()

/** Holds every line of the card that stands, until it is gone. */
const holdCard = async (page: Screen): Promise<void> => {
  const title = await page.locator('.caution-card h2').innerText()
  for (const line of await page.locator('.hold-to-confirm .says > span').allInnerTexts()) await holdLine(page, line.split('\n')[0]!)
  await expect.poll(() => page.locator('.caution-card h2').allInnerTexts()).not.toContain(title)
}

describe('trends and bench methods without a network', () => {
  const lab = new Laboratory()
  let phone: AnyPhone
  let page: Screen

  beforeAll(async () => {
    await lab.start()
    phone = phoneOf(lab.origin)
    page = await phone.open(`/#enrol=${lab.code}`)
    await found(page, 'Rosa Kern')
    await readyForNoNetwork(page)
    await phone.close()
    await lab.stop()
    page = await phone.open()
    await unlock(page, operator)
  })
  afterAll(async () => {
    await phone.end()
    await lab.end()
  })

  it('a reading stands on its chart at once, large, with its verdict', async () => {
    await saveReading(page, '21.4', 'neg-1-dev-temp')
    await goTo(page, '/trends/neg-1-dev-temp')
    await chart(page).waitFor()
    expect(await readout(page)).toBe('21.4')
    expect(await page.locator('.chart-readout').innerText()).toContain('ACT')
    await page.getByText(/^Rule 1: one reading beyond 3 sigma/).first().waitFor()
  })

  it('is gone through by buttons, slider and finger, and zoomed by buttons and by two fingers', async () => {
    await press(page, 'Reading before')
    expect(await readout(page)).not.toBe('21.4')
    const slider = page.getByRole('slider', { name: 'Go through the readings' })
    await slider.evaluate((it) => it.focus())
    await page.keyboard.press('End')
    expect(await readout(page)).toBe('21.4')
    const count = async (): Promise<number> => Number(/: (\d+) readings between/.exec((await chart(page).getAttribute('aria-label'))!)![1])
    const before = await count()
    await press(page, 'Closer')
    expect(await count()).toBeLessThan(before)
    await press(page, 'All')
    const all = await count()
    expect(all).toBeGreaterThanOrEqual(before)
    // Two fingers moved apart, by pointer events as a touch screen sends them.
    await page.evaluate(() => {
      const svg = document.querySelector('svg.control-chart[role="img"]')!
      const box = svg.getBoundingClientRect()
      const send = (type: string, pointerId: number, share: number): boolean =>
        svg.dispatchEvent(new PointerEvent(type, { pointerId, pointerType: 'touch', bubbles: true, clientX: box.left + box.width * share, clientY: box.top + 60 }))
      send('pointerdown', 1, 0.55)
      send('pointerdown', 2, 0.65)
      send('pointermove', 1, 0.2)
      send('pointermove', 2, 0.95)
      send('pointerup', 1, 0.2)
      send('pointerup', 2, 0.95)
    })
    await expect.poll(count).toBeLessThan(all)
    const box = (await chart(page).boundingBox())!
    await page.touchscreen.tap(box.x + box.width * 0.4, box.y + box.height * 0.4)
    await expect.poll(() => readout(page)).not.toBe('21.4')
  })

  it('range, average and sums have charts of their own; limits come from the plan or from the readings', async () => {
    for (const name of ['Range', 'EWMA', 'CUSUM', 'Readings']) await page.locator('.segments label', { hasText: name }).first().click()
    await page.locator('.segments label', { hasText: 'Of the readings' }).click()
    await page.getByText('Mean ± 3 sigma').waitFor()
  })

  it('goes out as CSV, as SVG that stands by itself, and as PNG', async () => {
    const taken = (name: string): Promise<Buffer> => phone.fileOf(() => press(page, name))
    expect((await taken('CSV')).toString()).toMatch(/^time,value,unit,verdict,found,batch,entry\r\n/)
    const svg = (await taken('Picture, SVG')).toString()
    expect(svg).toContain('Harbour Lane Film Laboratory')
    expect(svg).not.toContain('var(--')
    expect((await taken('Picture, PNG')).subarray(1, 4).toString()).toBe('PNG')
  })

  it('hydroquinone shows its cautions before the step with the solvent, and no step before they were held', async () => {
    await goTo(page, '/method/neg-1-dev-hydroquinone')
    for (const card of ['Ethyl acetate', 'Titration with solvent extraction']) {
      await page.getByRole('heading', { name: card }).waitFor()
      expect(await page.getByText('This phone stays outside the room', { exact: false }).count()).toBe(0)
      await holdCard(page)
    }
    await page.getByText('This phone stays outside the room', { exact: false }).waitFor()
  })

  it('bromide is found by its curve, pasted; the result is a reading like any other', async () => {
    await goTo(page, '/method/neg-1-dev-bromide')
    for (const card of ['Silver nitrate', 'acid']) {
      await page.getByRole('heading', { name: new RegExp(card, 'i') }).first().waitFor()
      await holdCard(page)
    }
    await press(page, 'To the figures')
    await press(page, 'Paste the points…')
    const text = Array.from({ length: 17 }, (_, index) => `${(index * 0.4).toFixed(1)}\t${Math.round(120 + 110 * Math.tanh((index * 0.4 - 3.1) * 4) + index)}`).join('\n')
    await page.getByLabel('Volume and meter, a point to a line').fill(text)
    await press(page, /^Take these points \(17/)
    await page.locator('svg.titration-chart .end').first().waitFor({ state: 'attached' })
    const save = page.getByRole('button', { name: /^Save 0\.\d\d g\/L/ })
    const value = /Save (\S+)/.exec(await save.innerText())![1]!
    await save.click()
    await page.getByText('Saved on this phone').waitFor()
    await goTo(page, '/trends/neg-1-dev-bromide')
    await chart(page).waitFor()
    expect(await readout(page)).toBe(value)
  })

  it('a bad electrode is refused, and its meter counts as failed', async () => {
    await goTo(page, '/method/ph-slope')
    const fill = async (index: number, celsius: string, millivolts: string): Promise<void> => {
      await page.getByLabel('Temperature').nth(index).fill(celsius)
      await page.getByLabel('Voltage at rest').nth(index).fill(millivolts)
    }
    await fill(0, '25', '8')
    await fill(1, '25', '-122.3')
    await page.getByText('In good order.').waitFor()
    await fill(1, '25', '-90')
    await page.getByText('pH is not to be read with this electrode').waitFor()
    await press(page, 'Save it as refused')
    await page.waitForURL('**/trends/ph-slope')
    expect(await page.locator('.chart-readout').innerText()).toContain('ACT')
    await goTo(page, '/trends/ph-offset')
    await chart(page).waitFor()
  })

  it('silver and replenishment are worked out of what was read', async () => {
    await goTo(page, '/silver')
    await page.getByText('Plated against brought in').waitFor()
    await goTo(page, '/replenish')
    await page.getByText(/^At this rate potassium bromide/).waitFor()
  })

  it('broke no content policy and failed nowhere', () => {
    expect(phone.complaints).toEqual([])
  })
})
