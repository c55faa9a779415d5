import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { phoneOf, type AnyPhone } from './engines/phone-of.ts'
import type { Screen } from './engines/screen.ts'
import { found, goTo, keyIn, Laboratory, press, readyForNoNetwork, unlock } from './harness.ts'

/** S-04: an analytic negative curve of gamma 0.67988 with toe and shoulder, read to 0.01 on 21 steps of 0.15; worked out apart. */
const densities = ['0.24', '0.24', '0.25', '0.27', '0.31', '0.37', '0.46', '0.55', '0.65', '0.75', '0.85', '0.95', '1.06', '1.16', '1.26', '1.36', '1.46', '1.57', '1.67', '1.77', '1.87']
const operator = 'Marta Quintela'

const at = (page: Screen, step: number) => page.getByText(`Step ${step} of 21`).waitFor()
const figure = async (page: Screen, name: string): Promise<string> => (await page.locator('tr', { has: page.getByRole('rowheader', { name, exact: true }) }).locator('td').first().innerText()).trim()

/** Densities as they are drawn: off the heights of the points, between the lines of the grid. */
const drawn = (page: Screen): Promise<number[]> =>
  page.evaluate(() => {
    const chart = document.querySelector('main .card svg.curve-chart')!
    const labels = [...chart.querySelectorAll('text[text-anchor="end"]')].map((it) => ({ density: Number(it.textContent), y: Number(it.getAttribute('y')) - 4 }))
    const [zero, one] = [0, 1].map((density) => labels.find((it) => it.density === density)!.y) as [number, number]
    return [...chart.querySelectorAll('circle.point')].map((it) => (Number(it.getAttribute('cy')) - zero) / (one - zero))
  })

describe('a 21-step strip without a network', () => {
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

  it('is keyed by the pad, which goes on by itself; a dead battery costs nothing', async () => {
    await goTo(page, '/check/neg-1-strip')
    await at(page, 1)
    for (const [index, keyed] of densities.slice(0, 4).entries()) {
      // With the point and without it: the densitometer shows two decimals either way.
      await keyIn(page, index % 2 ? keyed : keyed.replace('.', ''))
      await at(page, index + 2)
    }
    await page.waitForTimeout(200)
    await phone.close()
    page = await phone.open()
    await unlock(page, operator)
    await goTo(page, '/check/neg-1-strip')
    await at(page, 5)
    // The rest by a keyboard wedge.
    for (const keyed of densities.slice(4, -1)) await page.keyboard.type(keyed)
    await at(page, 21)
  })

  it('a step that does not lie with its neighbours is asked about before anything is saved', async () => {
    await page.keyboard.type('0.87')
    await press(page, 'Save the strip')
    await page.getByText('Step 21 does not lie with its neighbours').waitFor()
    await press(page, 'Read again')
    await at(page, 21)
    await page.keyboard.type('1.87')
    await press(page, 'Save the strip')
    await page.getByText('Saved on this phone').waitFor()
  })

  it('its curve is drawn at once over the reference and the strips before it, with the figures of the calculation', async () => {
    const points = await drawn(page)
    expect(points).toHaveLength(21)
    points.forEach((density, index) => expect(density, `step ${index + 1}`).toBeCloseTo(Number(densities[index]), 2))
    expect(await page.locator('main .card svg.curve-chart polyline.reference').first().getAttribute('points')).toMatch(/^(\S+ ){20}\S+$/)
    // As many as the invented past has, five at most: it begins with a shift, whatever the hour of the test.
    const before = Number(/the last (\d+)/.exec(await page.locator('.curve-key').innerText())![1])
    expect(before).toBeGreaterThan(0)
    expect(before).toBeLessThanOrEqual(5)
    expect(await page.locator('main .card svg.curve-chart[role="img"] polyline.past').count()).toBe(before)
    expect(await figure(page, 'Base + fog')).toBe('0.24')
    expect(await figure(page, 'Gamma')).toBe('0.68')
    expect(await figure(page, 'Greatest density')).toBe('1.87')
    // 0.646667 of the tabulated estimator, printed to hundredths.
    expect(await figure(page, 'Average gradient')).toBe('0.65')
    // Its steps run from −3 here: 0.675 above that, half a hundredth either way.
    expect(await figure(page, 'Speed point')).toMatch(/^−2\.3[23]$/)
    await page.getByText(/^Gamma: the greatest slope/).waitFor()
  })

  it('asks for a second strip before a hold, and names what the pattern points to', async () => {
    await page.getByText('A second strip before anything is held').waitFor()
    await page.getByText('What it points to').waitFor()
    expect(await page.getByRole('button', { name: 'Key the second strip' }).isVisible()).toBe(true)
  })

  it('goes out as CGATS and comes in again, a step named by its line where it is wrong', async () => {
    const text = (await phone.fileOf(() => press(page, 'Save as CGATS'))).toString()
    expect(text).toMatch(/^CGATS\.17\r\n/)
    await press(page, 'Key the second strip')
    await press(page, 'File or paste…')
    const box = page.getByLabel('Or paste here')
    await box.fill(text.replace('NUMBER_OF_SETS\t21', 'NUMBER_OF_SETS\t22'))
    await page.getByText('22 samples are announced, 21 are there').waitFor()
    await box.fill(text)
    await press(page, 'Take these densities')
    await at(page, 21)
    await press(page, 'Save the strip')
    await page.getByText('Confirmed. What to do comes next.').waitFor()
  })

  it('broke no content policy and failed nowhere', () => {
    expect(phone.complaints).toEqual([])
  })
})
