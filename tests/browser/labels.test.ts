import { join } from 'node:path'
import Database from 'better-sqlite3'
import type { Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { filmFlags, writeCodeFilm } from './fake-camera.ts'
import { allSent, found, goTo, Laboratory, Phone, press, saveReading } from './harness.ts'

describe('a tank label', () => {
  const lab = new Laboratory()
  let phone: Phone
  let page: Page

  beforeAll(async () => {
    await lab.start()
    const film = join(lab.folder, 'camera.y4m')
    writeCodeFilm(film, `${lab.origin}/at/1/station/neg-1-fix`)
    phone = new Phone(lab.origin, filmFlags(film))
    page = await phone.open(`/#enrol=${lab.code}`)
    await found(page, 'Rosa Kern')
  })
  afterAll(async () => {
    await phone.end()
    await lab.end()
  })

  it('is not needed: a camera that is not allowed is said, and the check can be keyed', async () => {
    await goTo(page, '/check/neg-1-fix-ph')
    await press(page, 'Scan label')
    await page.getByText('The camera is not allowed').waitFor()
    await press(page, 'Close')
    await page.getByRole('button', { name: 'Scan label' }).waitFor()
  })

  it('marks the reading as taken at the tank, with the time spent there', async () => {
    await page.context().grantPermissions(['camera'], { origin: lab.origin })
    await press(page, 'Scan label')
    await page.getByRole('button', { name: 'At the tank' }).waitFor()
    await saveReading(page, '4.50')
    await allSent(page)
    const record = new Database(join(lab.folder, 'bathkeeper.db'), { readonly: true })
    const bodies = record.prepare("select body from entries where kind = 'reading'").all() as { body: string }[]
    record.close()
    const own = bodies.map(({ body }) => (JSON.parse(body) as { data: { check: string; keyed: string; atTank?: boolean; stationSeconds?: number; notedAt?: string } }).data).filter((it) => it.check === 'neg-1-fix-ph' && !it.notedAt)
    expect(own).toMatchObject([{ keyed: '4.50', atTank: true }])
    expect(own[0]!.stationSeconds).toBeGreaterThan(0)
  })

  it('of another place says so and leads there', async () => {
    await goTo(page, '/check/neg-1-wash-flow')
    await press(page, 'Scan label')
    await page.getByText('This is the label of Fixing bath 1.').waitFor()
    await press(page, 'Go to Fixing bath 1')
    await page.getByRole('heading', { name: 'Fixing bath 1', level: 1 }).waitFor()
  })

  it('opens its place from Now, after somebody has said that no film lies open', async () => {
    await goTo(page, '/now')
    await page.getByRole('link', { name: 'Scan', exact: true }).click()
    await page.getByText('Panchromatic stock').waitFor()
    expect(await page.locator('video').count()).toBe(0)
    await press(page, 'No film lies open here')
    await page.getByRole('heading', { name: 'Fixing bath 1', level: 1 }).waitFor()
    await page.getByRole('link', { name: /Fixing bath temperature/ }).click()
    await page.getByRole('button', { name: 'At the tank' }).waitFor()
  })

  it('opened by an ordinary camera leads to its check, and marks nothing', async () => {
    await page.evaluate(() => {
      const link = document.createElement('a')
      link.href = '/at/1/check/neg-1-dev-temp'
      document.body.append(link)
      link.click()
      link.remove()
    })
    await page.waitForURL('**/check/neg-1-dev-temp')
    await page.getByRole('button', { name: 'Scan label' }).waitFor()
  })

  it('is printed from the plan: one for each place with a check, eight on an A4 page, and read again by what it says', async () => {
    await goTo(page, '/menu/labels')
    const labels = page.locator('.labels > li')
    await labels.first().waitFor()
    const count = await labels.count()
    expect(count).toBeGreaterThan(10)
    const pdf = (await page.pdf({ preferCSSPageSize: true })).toString('latin1')
    const pages = [...pdf.matchAll(/\/Type\s*\/Page\b/g)].length
    expect(pages).toBe(Math.ceil(count / 8))
    await page.emulateMedia({ media: 'print' })
    const size = await labels.first().boundingBox()
    const seen = await labels.first().locator('svg').boundingBox()
    await page.emulateMedia({ media: 'screen' })
    const millimetre = 96 / 25.4
    expect(size!.width).toBeCloseTo(92 * millimetre, 0)
    // Large enough for a phone at arm's length.
    expect(seen!.width).toBeGreaterThan(45 * millimetre)
  })

  it('did all that within the content policy', () => {
    expect(phone.complaints).toEqual([])
  })
})
