import { join } from 'node:path'
import Database from 'better-sqlite3'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { holdBeforeCamera, secondsSeen } from './before-camera.ts'
import { writeDisplayPicture } from './display-picture.ts'
import { engine, phoneOf, type AnyPhone } from './engines/phone-of.ts'
import type { Screen } from './engines/screen.ts'
import { allSent, found, goTo, holdLine, keyIn, Laboratory, letTimePass, pathOf, press, readyForNoNetwork, save, saveReading, setClockOn, unlock } from './harness.ts'
import { handOver, passphraseField, sayWhy, takeOver, walkAndAccept } from './signing.ts'

const operator = 'Marta Quintela'
const supervisor = 'Rosa Kern'
const fixingBath = 'neg-1-fix'
/** An analytic negative curve of gamma 0.67988 with toe and shoulder, read to 0.01 on 21 steps of 0.15; worked out apart. */
const densities = ['0.24', '0.24', '0.25', '0.27', '0.31', '0.37', '0.46', '0.55', '0.65', '0.75', '0.85', '0.95', '1.06', '1.16', '1.26', '1.36', '1.46', '1.57', '1.67', '1.77', '1.87']

/** An acid is offered only when everything that guards people and bath was seen to in time: does what the refusal names, until it is offered. */
const seeToWhatComesFirst = async (page: Screen, exceptionPath: string): Promise<string[]> => {
  const seenTo: string[] = []
  for (;;) {
    await goTo(page, exceptionPath)
    await page.getByRole('link', { name: /Acetic acid/ }).click()
    await page.getByText('Before you pour').or(page.getByText('Not now')).first().waitFor()
    if (await page.getByText('Before you pour').isVisible()) return seenTo
    if (seenTo.length > 6) throw new Error(`still refused after ${seenTo.join(', ')}`)
    seenTo.push(await page.locator('.banner.stop').innerText())
    await page.locator('.next a').click()
    const right = page.getByRole('button', { name: /^Right/ })
    await right.or(page.getByRole('group', { name: 'Number pad' })).first().waitFor()
    if (await right.isVisible()) await right.click()
    else {
      const [aim] = /[\d.]+/.exec(await page.getByText(/^.*aim /).first().innerText()) ?? []
      await saveReading(page, aim!)
    }
    await page.getByText('Saved on this phone').waitFor()
  }
}

interface Row { dev: string; seq: number; id: string; kind: string; status: string; body: string }
const entries = (lab: Laboratory): Row[] => {
  const record = new Database(join(lab.folder, 'bathkeeper.db'), { readonly: true })
  try {
    return record.prepare('select dev, seq, id, kind, status, body from entries').all() as Row[]
  } finally {
    record.close()
  }
}

describe('the main job, with the server really stopped and the browser really closed', () => {
  const lab = new Laboratory()
  let first: AnyPhone
  let second: AnyPhone

  beforeAll(async () => {
    await lab.start()
    first = phoneOf(lab.origin)
    second = phoneOf(lab.origin)
  })
  afterAll(async () => {
    await first.end()
    await second.end()
    await lab.end()
  })

  it('a new laboratory is founded, and a second phone let in', async () => {
    const page = await first.open(`/#enrol=${lab.code}`)
    await found(page, supervisor)
    await readyForNoNetwork(page)
    await goTo(page, '/menu/devices')
    await page.getByLabel('Passphrase').fill('silver nitrate in the dark')
    await press(page, 'Sign in to manage')
    await press(page, 'Add a phone')
    const code = await page.locator('.digits').innerText()

    // What a phone lacks and how it gets onto the home screen stands before anything is asked.
    const other = await second.open('/setup')
    await other.getByText(/^Android: /).waitFor()
    await other.getByText(/^iPhone: /).waitFor()
    await other.getByText('Lacks').waitFor()
    await other.getByRole('link', { name: 'Go on' }).click()
    await other.getByLabel('Code').fill(code)
    await other.getByLabel('Name of this phone').fill('Machine room 2')
    await press(other, 'Go on')
    const digits = (await other.locator('.digits').innerText()).trim()

    await page.getByRole('button', { name: 'Close' }).click()
    await page.getByRole('button', { name: /Machine room 2/ }).click()
    expect((await page.locator('.digits').innerText()).trim()).toBe(digits)
    await press(page, 'They agree: let it in')
    await unlock(other, operator)
    await goTo(page, '/now')
    await allSent(page)
    await second.close()
  })

  let exceptionPath = ''

  it('an operator without a network confirms a pH, is refused the acid, finds the sulfite, pours, waits and closes the exception', async () => {
    await first.close()
    await lab.stop()

    // A cold start: no server, no page in memory.
    let page = await first.open()
    await unlock(page, operator)
    await page.getByRole('link', { name: /^Start the/ }).click()
    await page.waitForURL('**/round/**')
    await page.getByText(/^1 of \d+$/).waitFor()

    // The battery dies with half a number keyed, and the round is where it was.
    const pad = page.getByRole('group', { name: 'Number pad' })
    for (let step = 0; !(await pad.isVisible()); step++) {
      if (step > 30) throw new Error('no reading in the round')
      await page.getByRole('button', { name: /^Right/ }).click()
      await page.getByText('Saved on this phone').waitFor()
      await page.getByRole('button', { name: /^Next: / }).click()
    }
    const title = await page.getByRole('heading', { level: 1 }).innerText()
    const where = await page.getByText(/^\d+ of \d+$/).innerText()
    await keyIn(page, '2')
    await page.waitForTimeout(200)
    await first.close()
    page = await first.open()
    await unlock(page, operator)
    await page.getByRole('link', { name: /^Go on with the round/ }).click()
    await page.locator('output.keyed').waitFor()
    expect(await page.locator('output.keyed').innerText()).toBe('2')
    expect(await page.getByRole('heading', { level: 1 }).innerText()).toBe(title)
    expect(await page.getByText(/^\d+ of \d+$/).innerText()).toBe(where)

    // Sulfite is found short first: then no acid, whatever the pH.
    await saveReading(page, '6', `${fixingBath}-sulfite`)
    await saveReading(page, '4.92', `${fixingBath}-ph`)
    expect(await page.getByText('ACT').isVisible()).toBe(true)
    await press(page, 'Read again')
    await saveReading(page, '4.92')
    await page.getByRole('link', { name: 'What to do' }).click()
    await page.waitForURL('**/exception/**')
    exceptionPath = await pathOf(page)
    await page.getByRole('link', { name: /Acetic acid/ }).click()
    await page.getByText('Not now').waitFor()
    expect(await page.locator('.banner.stop').innerText()).toMatch(/[Ss]ulfite/)
    expect(await page.locator('.amount').count()).toBe(0)

    // A repeat finds it in limits: the first one was a bad sample.
    await saveReading(page, '12', `${fixingBath}-sulfite`)
    await page.getByText('The repeat is in limits').waitFor()

    await seeToWhatComesFirst(page, exceptionPath)
    const before = await page.locator('#content').innerText()
    expect(before).toContain('Danger'.toUpperCase())
    expect(await page.locator('.amount').count()).toBe(0)
    await holdLine(page, /^Into a fixing bath/)
    expect(await page.locator('.amount').count()).toBe(0)
    await holdLine(page, /^Slowly, at the circulation return/)
    await page.locator('.amount').waitFor()
    const amount = await page.locator('.amount').innerText()
    expect(amount).toMatch(/^\d+(\.\d+)?\s*(mL|L)$/)

    await page.getByText('Show the working').click()
    await page.locator('.working li').first().waitFor()
    await press(page, 'Close')
    await press(page, /^Poured \d/)
    await page.getByRole('timer').waitFor()

    // Somebody sets the phone's clock to when it would have mixed, and opens the screen anew.
    await setClockOn(page, 30)
    await goTo(page, '/now')
    await page.getByText(/^Mixing, /).waitFor()
    await goTo(page, exceptionPath)
    await page.getByRole('timer').waitFor()
    expect(await page.getByRole('link', { name: /^Re-check/ }).count()).toBe(0)
    await setClockOn(page, -30)
    await letTimePass(page, 30)
    await page.getByRole('link', { name: /^Re-check/ }).first().click()
    await saveReading(page, '4.52')
    await page.getByText('Back in limits').waitFor()
    await goTo(page, exceptionPath)
    await page.getByText('Closed: back in limits.').waitFor()
    await first.close()
  })

  it('the entries go up by themselves, each once, and the second phone sees them', async () => {
    // The mixing has passed for the server as it has for the phone.
    await lab.start(31 * 60_000)
    const page = await first.open()
    await unlock(page, supervisor)
    await allSent(page)

    const rows = entries(lab)
    expect(rows.every(({ status }) => status === 'valid')).toBe(true)
    expect(new Set(rows.map(({ id }) => id)).size).toBe(rows.length)
    for (const dev of new Set(rows.map((row) => row.dev))) {
      const seqs = rows.filter((row) => row.dev === dev).map(({ seq }) => seq).sort((a, b) => a - b)
      expect(seqs).toEqual(seqs.map((_, index) => index + 1))
    }
    // The invented past has adds of its own: these answer this exception.
    const answers = rows.filter(({ body }) => (JSON.parse(body) as { data: { exception?: string } }).data.exception === exceptionPath.split('/').at(-1))
    expect(answers.map(({ kind }) => kind).sort()).toEqual(['add', 'caution', 'caution'])

    const other = await second.open()
    await unlock(other, operator)
    await goTo(other, exceptionPath)
    await other.getByText('Closed: back in limits.').waitFor({ timeout: 60_000 })
  })

  it('a supervisor settles what stands in the way of the shift before, and signs it', async () => {
    const { page } = first
    await goTo(page, '/shift')
    await page.getByRole('link', { name: 'To that shift' }).click()
    await page.waitForURL('**/shift/2**')
    const title = page.getByRole('heading', { level: 1 })
    const shift = await title.innerText()
    await sayWhy(page)
    // The invented past knows a handover at most hours of the day, not at all of them.
    const notGiven = page.getByRole('button', { name: 'No handover given' })
    const notAccepted = page.getByRole('button', { name: /^Handover not accepted/ })
    const sign = page.getByRole('button', { name: 'Sign this shift' })
    if (await notGiven.isVisible()) await handOver(page, 'Both machines run. Watch the fixing bath.')
    await notAccepted.or(sign).first().waitFor()
    if (await notAccepted.isVisible()) {
      // Whoever gave it cannot accept it: the tap hands the phone on.
      await notAccepted.click()
      await takeOver(page, operator, shift)
      expect(await walkAndAccept(page, operator)).toBeGreaterThan(0)
      await press(page, 'Hand the phone to a supervisor')
      await takeOver(page, supervisor, shift)
    }
    await sign.click()
    const dialog = page.getByRole('dialog')
    const field = await passphraseField(page)
    const lasting = dialog.getByLabel('Why the shift is released all the same')
    if (await lasting.count()) await lasting.fill('Looked at with the operators.')
    await field.fill('silver nitrate in the dark')
    await dialog.getByRole('button', { name: 'Sign', exact: true }).click()
    await page.getByRole('heading', { name: 'Signed', level: 2 }).waitFor()
    await page.getByText('Checked now: every entry under it is as it was signed.').waitFor()
    await allSent(page)
    expect(entries(lab).filter(({ kind }) => kind === 'signOff').map(({ status }) => status)).toEqual(['valid'])
  })

  it('a display is read through the camera, off a picture as well; its reading stands on the chart, and a strip draws its curve', async () => {
    const { page } = first
    const picture = join(lab.folder, 'display.jpg')
    await writeDisplayPicture(picture, '4.58')
    await goTo(page, `/check/${fixingBath}-ph`)
    await press(page, 'Read the display with the camera')
    await press(page, /^Fetch \d/)
    await expect.poll(() => secondsSeen(page)).toBeGreaterThan(0)
    await press(page, 'Key it instead')
    // A canvas as a camera was read in WebKitGTK in two runs of three; why not in the third is not known. Its own camera runs, as above.
    if (engine !== 'webkit') {
      await holdBeforeCamera(page, picture)
      await press(page, 'Read the display with the camera')
      await page.getByRole('button', { name: 'Take 4.58' }).waitFor()
      await press(page, 'Key it instead')
    }

    await press(page, 'Read the display with the camera')
    await page.locator('.meter-picture video').waitFor()
    await page.locator('input[type=file]').setInputFiles(picture)
    await page.locator('.meter-picture canvas').waitFor()
    await press(page, 'Take 4.58')
    await page.locator('.read-line canvas').waitFor()
    expect(await page.locator('output.keyed').innerText()).toBe('4.58')
    await save(page)
    await goTo(page, `/trends/${fixingBath}-ph`)
    await page.locator('svg.control-chart[role="img"]').waitFor()
    expect((await page.locator('.chart-readout strong').innerText()).trim()).toBe('4.58')

    await goTo(page, '/check/neg-1-strip')
    await page.getByText('Step 1 of 21').waitFor()
    for (const density of densities) await page.keyboard.type(density)
    await press(page, 'Save the strip')
    await page.getByText('Saved on this phone').waitFor()
    const curve = page.locator('main .card svg.curve-chart[role="img"]')
    await curve.waitFor()
    expect(await curve.evaluate((it) => it.querySelectorAll('circle.point').length)).toBe(21)
    expect((await page.locator('tr', { hasText: /^Gamma/ }).locator('td').first().innerText()).trim()).toBe('0.68')
    await allSent(page)
  })

  it('nothing broke the content policy, and no page failed', () => {
    expect(first.complaints).toEqual([])
    expect(second.complaints).toEqual([])
  })
})
