import type { Page } from 'playwright-core'
import { mkdirSync } from 'node:fs'
import { join } from 'node:path'
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest'
import { demoLab } from '../../src/demo/lab.ts'
import { without } from '../../src/plan/without.ts'
import type { Phone as Device } from '../server/phone.ts'
import { violationsInBothThemes } from './axe.ts'
import { allSent, found, goTo, holdLine, Laboratory, Phone, press } from './harness.ts'
import { letIn } from './let-in.ts'

/** Where to leave pictures of what was looked at, for people. */
const pictures = process.env['SHOTS']
const desks = [
  { width: 1024, height: 768 },
  { width: 1366, height: 768 },
  { width: 1920, height: 1080 },
] as const
const screens = [
  '/board', '/now', '/machine/neg-1', '/station/neg-1-fix', '/round', '/check/neg-1-fix-ph', '/bench', '/bench/acidBase.dose', '/bench/bath.correct', '/trends', '/trends/neg-1-fix-ph', '/shift', '/record', '/menu', '/menu/plan', '/menu/labels',
  '/menu/devices', '/mixing', '/waste', '/emergency', '/safety',
] as const

describe('the same app on a desk', { timeout: 400_000 }, () => {
  const lab = new Laboratory()
  let phone: Phone
  let page: Page
  let device: Device

  beforeAll(async () => {
    if (pictures) mkdirSync(pictures, { recursive: true })
    await lab.start()
    phone = new Phone(lab.origin)
    page = await phone.open(`/#enrol=${lab.code}`)
    await found(page, 'Rosa Kern')
    device = await letIn(page, lab.origin)
    await allSent(page)
  })
  afterAll(async () => {
    await phone.end()
    await lab.end()
  })
  let failed: string | undefined
  beforeEach(({ skip }) => skip(failed !== undefined, `after: ${failed}`))
  afterEach(({ task }) => {
    if (task.result?.state === 'fail') failed ??= task.name
  })

  it('has no board among its places on a phone, and one from 1024 px on', async () => {
    const board = page.getByRole('navigation', { name: 'Places' }).getByRole('link', { name: 'Board' })
    expect(await board.isVisible()).toBe(false)
    await page.setViewportSize(desks[0])
    await board.click()
    await page.getByRole('heading', { level: 1, name: 'Board' }).waitFor()
    expect(await board.getAttribute('aria-current')).toBe('page')
  })

  it('shows each machine with what is held, out, late and due, and follows the record by itself', async () => {
    const machine = page.getByRole('region', { name: 'Positive machine 2' })
    const held = (): Promise<string> => machine.locator('.tallies li', { hasText: 'held' }).locator('strong').innerText()
    expect(await held()).toBe('0')
    const hold = device.entry('hold', { machine: 'pos-2', reason: 'Scratch on the base side' }, 'marta')
    await device.push([hold])
    await machine.getByText('Scratch on the base side').waitFor()
    expect(await held()).toBe('1')
    await device.push([device.entry('release', { hold: hold.entry.id, reason: 'Leader clean' }, 'marta')])
    await machine.getByText('Scratch on the base side').waitFor({ state: 'detached' })
    expect(await held()).toBe('0')
    expect(await violationsInBothThemes(page)).toEqual([])
  })

  it('goes on where nobody has the phone in hand, and asks who it is before anything else is opened', async () => {
    await goTo(page, '/menu')
    await press(page, /Lock|Hand/)
    await page.getByRole('heading', { name: 'Who has the phone?' }).waitFor()
    await goTo(page, '/board')
    await page.getByRole('region', { name: 'Negative machine 1' }).waitFor()
    const reading = device.entry('note', { text: 'said meanwhile', about: 'incident' }, 'marta')
    await device.push([reading])
    await page.getByText('1 incident to acknowledge').waitFor()
    await page.getByRole('link', { name: /incident to acknowledge/ }).click()
    await page.getByRole('heading', { name: 'Who has the phone?' }).waitFor()
    await page.getByRole('button', { name: 'Rosa Kern' }).click()
    for (const key of '2468') await page.getByRole('group').getByRole('button', { name: key, exact: true }).click()
    await press(page, 'Go on')
    await page.getByText('said meanwhile').first().waitFor()
  })

  it.each(desks)('is never wider than $width px, and its places stand at the side', async (size) => {
    await page.setViewportSize(size)
    const problems: string[] = []
    for (const path of screens) {
      await goTo(page, path)
      await page.locator('main').waitFor()
      await page.waitForFunction(() => document.querySelector('main')?.textContent !== '' && !document.title.startsWith('One moment'))
      if (pictures) await page.screenshot({ path: join(pictures, `desk-${size.width}-${path.replaceAll('/', '_')}.png`) })
      const wide = await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth)
      if (wide > 0) problems.push(`${path}: ${wide} px too wide`)
      const nav = await page.getByRole('navigation', { name: 'Places' }).boundingBox()
      const main = await page.locator('main').boundingBox()
      if (nav && main && nav.x + nav.width > main.x + 1) problems.push(`${path}: the places cover the content`)
    }
    expect(problems).toEqual([])
  })

  it('keeps in sight what a revision left open, until it is closed, and shows the charts of what is gone', async () => {
    await page.setViewportSize(desks[1])
    await goTo(page, '/board')
    const { entry } = (await device.pullAll()).find(({ entry: it }) => it['kind'] === 'plan')!
    const out = { check: 'neg-1-fix-ph', plan: entry.id, value: 4.92, keyed: '4.92', unit: 'pH', how: 'keyed', verdict: 'ACT' }
    const first = device.entry('reading', out, 'marta')
    const { plan: signed } = entry['data'] as { plan: ReturnType<typeof demoLab> }
    const smaller = without(without({ ...signed, formulas: [] }, 'checks', 'neg-1-fix-ph'), 'machines', 'pos-2')
    await device.push([first, device.entry('reading', { ...out, repeatOf: first.entry.id }, 'marta'), device.entry('hold', { machine: 'pos-2', reason: 'Sold with its film' }, 'marta')])
    await page.getByRole('region', { name: 'Positive machine 2' }).getByText('Sold with its film').waitFor()
    await device.push([device.entry('plan', { plan: smaller, effectiveFrom: Date.now(), why: 'Positive machine sold' }, 'rosa-kern')])
    const left = page.locator('.card', { hasText: 'No longer in the plan' })
    await left.getByText('Positive machine 2 is still held').waitFor()
    await page.getByRole('region', { name: 'Positive machine 2' }).waitFor({ state: 'detached' })
    for (const [path, says] of [['/now', 'No longer in the plan'], ['/shift', 'pH 4.92'], ['/trends', 'No longer in the plan'], ['/round', 'Round'], ['/bench', 'Bench']] as const) {
      await goTo(page, path)
      await page.getByText(says, { exact: false }).first().waitFor()
    }
    await goTo(page, '/trends/neg-1-fix-ph')
    await page.getByRole('heading', { level: 1, name: /pH$/ }).waitFor()
    await page.locator('svg').first().waitFor()
    await goTo(page, `/exception/${first.entry.id}/acid`)
    await press(page, /^Close by hand/)
    const dialog = page.getByRole('dialog')
    await dialog.getByText('Another reason').click()
    await dialog.getByRole('textbox').fill('The bath is no longer used')
    await holdLine(page, /^Close this exception/)
    await dialog.waitFor({ state: 'detached' })
    await goTo(page, '/machine/pos-2')
    await press(page, 'Release the machine')
    await page.getByLabel('Why may it run again?').fill('Sold')
    await holdLine(page, /^Release Press/)
    await goTo(page, '/now')
    await page.getByRole('region', { name: 'Negative machine 1' }).waitFor()
    await left.waitFor({ state: 'detached' })
  })

  it('wipes the invented laboratory with one tap and one that it is meant', async () => {
    await goTo(page, '/menu')
    await press(page, 'Wipe the demo laboratory')
    await page.getByRole('dialog').getByRole('button', { name: 'Keep it' }).click()
    await press(page, 'Wipe the demo laboratory')
    await page.getByRole('dialog').getByRole('button', { name: 'Yes, wipe it' }).click()
    // The next laboratory can be founded at once.
    await page.getByRole('button', { name: 'A laboratory of your own' }).waitFor()
    await page.getByRole('button', { name: 'The demo laboratory', exact: true }).waitFor()
  })

  it('broke no content policy and failed nowhere', () => {
    expect(phone.complaints).toEqual([])
  })
})
