import type { Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { found, goTo, Laboratory, Phone, press } from './harness.ts'

/** What the hand would feel: each call, in ms on and off. */
const felt = (page: Page): Promise<number[][]> => page.evaluate(() => (globalThis as unknown as { felt: number[][] }).felt)
const leftOn = async (page: Page): Promise<number> => {
  const text = await page.getByRole('timer', { name: 'Time for the splice' }).innerText()
  const [, sign, minutes, seconds] = /^(−?)(\d+):(\d\d)$/.exec(text)!
  return (Number(minutes) * 60 + Number(seconds)) * (sign ? -1 : 1)
}

describe('the window of a splice', () => {
  const lab = new Laboratory()
  let phone: Phone
  let page: Page

  beforeAll(async () => {
    await lab.start()
    phone = new Phone(lab.origin)
    page = await phone.open(`/#enrol=${lab.code}`)
    await page.context().addInitScript(() => {
      const kept: number[][] = []
      Object.assign(globalThis, { felt: kept, lights: 0 })
      navigator.vibrate = (pattern) => {
        kept.push([pattern].flat() as number[])
        return true
      }
      const ask = navigator.wakeLock.request.bind(navigator.wakeLock)
      navigator.wakeLock.request = (type) => {
        ;(globalThis as unknown as { lights: number }).lights++
        return ask(type)
      }
    })
    await found(page, 'Rosa Kern')
  })
  afterAll(async () => {
    await phone.end()
    await lab.end()
  })

  it('is one tap from Now, and is the reserve of the elevator at the speed of the machine: 100 ft at 100 ft/min gives a minute', async () => {
    await page.getByRole('region', { name: 'Negative machine 1' }).getByRole('link', { name: /Splice/ }).click()
    await page.getByText('100 ft in the elevator at 100 ft/min').waitFor()
    expect(await page.getByRole('timer').innerText()).toBe('1:00')
  })

  it('is short where the elevator is not full, and is read across the room', async () => {
    await press(page, 'The elevator is not full')
    for (const key of ['Erase the last figure', 'Erase the last figure', 'Erase the last figure', '2', '5']) await page.getByRole('group').getByRole('button', { name: key, exact: true }).click()
    await page.getByText('25 ft in the elevator at 100 ft/min').waitFor()
    await press(page, 'Tail held: start')
    const figure = (await page.getByRole('timer', { name: 'Time for the splice' }).boundingBox())!
    expect(figure.height).toBeGreaterThan(100)
  })

  it('goes on through a reload, before anybody has unlocked the phone', async () => {
    await page.waitForTimeout(1500)
    const before = await leftOn(page)
    expect(before).toBeLessThanOrEqual(13)
    await page.reload()
    await page.getByRole('button', { name: 'Joined and let go' }).waitFor()
    const after = await leftOn(page)
    expect(after).toBeLessThanOrEqual(before)
    expect(after).toBeGreaterThan(before - 6)
    expect(await page.evaluate(() => (globalThis as unknown as { lights: number }).lights)).toBeGreaterThan(0)
  })

  it('is felt at its thresholds, and says when no join may be begun and when the elevator is empty', async () => {
    await page.getByText('Begin no join now').waitFor({ timeout: 15_000 })
    await page.getByText('The elevator is empty').waitFor({ timeout: 15_000 })
    const patterns = (await felt(page)).map((it) => it.join())
    expect(patterns).toContain('50')
    expect(patterns.at(-1)).toBe('250,120,250,120,250')
    await page.waitForTimeout(1200)
    expect(await leftOn(page)).toBeLessThan(0)
  })

  it('ends when the tail is let go', async () => {
    await press(page, 'It is over')
    await page.getByRole('button', { name: 'Tail held: start' }).waitFor()
    await page.reload()
    await page.getByRole('button', { name: 'Tail held: start' }).waitFor()
    await goTo(page, '/now')
    await page.getByRole('heading', { name: 'Who has the phone?' }).waitFor()
  })

  it('did all that within the content policy', () => {
    expect(phone.complaints).toEqual([])
  })
})
