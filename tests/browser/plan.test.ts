import { readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import Database from 'better-sqlite3'
import jsQR from 'jsqr'
import { chromium, type Page } from 'playwright-core'
import sharp from 'sharp'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { violations } from './axe.ts'
import { allSent, executablePath, found, goTo, holdLine, Laboratory, Phone, press, saveReading } from './harness.ts'

const limitField = 'Action limit, high'

interface Kept {
  kind: string
  op: string
  data: { check?: string; keyed?: string; verdict?: string; plan?: unknown; why?: string; effectiveFrom?: number; notedAt?: string }
}

describe('the lab plan', () => {
  const lab = new Laboratory()
  let phone: Phone
  let page: Page
  const entries = (kind: string): (Kept & { id: string; status: string })[] => {
    const record = new Database(join(lab.folder, 'bathkeeper.db'), { readonly: true })
    const rows = record.prepare('select id, status, body from entries where kind = ? order by gseq').all(kind) as { id: string; status: string; body: string }[]
    record.close()
    return rows.map(({ id, status, body }) => ({ id, status, ...(JSON.parse(body) as Kept) }))
  }

  const saved = async (button: string): Promise<string> => (await phone.fileOf(() => press(page, button))).toString()

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

  it('says what is wrong with a field while it is keyed, and cannot be signed before it is mended', async () => {
    await saveReading(page, '4.85', 'neg-1-fix-ph')
    await goTo(page, '/menu/plan/checks/neg-1-fix-ph')
    await page.getByText('Starting value: from memory').waitFor()
    await page.getByLabel(limitField).fill('4.6')
    await page.getByText(/Out of order/).waitFor()
    await page.getByLabel(limitField).fill('4,x')
    await page.getByText(/This is not a number/).waitFor()
    await goTo(page, '/menu/plan/review')
    await page.getByText('To mend before it can be signed').waitFor()
    await page.getByText('Fixing bath 1 · Fixing bath pH').first().waitFor()
    expect(await page.getByRole('button', { name: /^Sign / }).getAttribute('aria-disabled')).toBe('true')
  })

  it('keeps what was keyed through a page that dies, and a revision shows who set which aim', async () => {
    await goTo(page, '/menu/plan/checks/neg-1-fix-ph')
    await page.getByLabel(limitField).fill('4.9')
    await page.getByText('Will be set by you when you sign').waitFor()
    await page.getByRole('link', { name: 'Look over and sign' }).click()
    await page.getByText('was 4.8', { exact: false }).waitFor()
    await page.getByText(/→ Set by Rosa Kern/).waitFor()
    await page.getByLabel('Why').fill('Permitted by the stock')
    await press(page, 'Sign this change')
    await page.getByRole('heading', { name: 'Revisions' }).waitFor()
    await allSent(page)
    const [first, second] = entries('plan')
    expect(second).toMatchObject({ status: 'valid', data: { why: 'Permitted by the stock' } })
    expect(first!.id).not.toBe(second!.id)
    await page.getByRole('link', { name: /by Rosa Kern/ }).first().click()
    await page.getByText('Permitted by the stock').waitFor()
    await page.getByText('was 4.8', { exact: false }).waitFor()
  })

  it('judges new readings by the new limits; the old one keeps those it was judged by', async () => {
    await saveReading(page, '4.85', 'neg-1-fix-ph')
    await allSent(page)
    const [firstPlan, secondPlan] = entries('plan')
    const own = entries('reading').filter(({ data }) => data.check === 'neg-1-fix-ph' && !data.notedAt)
    expect(own.map(({ data }) => [data.keyed, data.verdict, data.plan])).toEqual([['4.85', 'ACT', firstPlan!.id], ['4.85', 'WARN', secondPlan!.id]])
  })

  it('copies a machine under a name of its own', async () => {
    await goTo(page, '/menu/plan/machines/neg-1')
    await press(page, 'Copy this machine')
    await page.getByLabel('Name of the new machine').fill('Negative machine 3')
    await page.getByRole('dialog').getByRole('button', { name: 'Copy this machine' }).click()
    await page.getByRole('heading', { name: 'Negative machine 3', level: 1 }).waitFor()
    await page.getByRole('link', { name: 'Look over and sign' }).click()
    await page.getByRole('heading', { name: 'In force from' }).waitFor()
    expect(await page.getByRole('button', { name: /^Sign / }).getAttribute('aria-disabled')).toBeNull()
    await goTo(page, '/menu/plan')
    await press(page, 'Drop all changes')
    await holdLine(page, /Hold to drop/)
    await page.getByRole('link', { name: 'Look over and sign' }).waitFor({ state: 'detached' })
  })

  it('proposes limits from the last readings, and the supervisor puts them into the plan', async () => {
    await goTo(page, '/menu/plan/checks/neg-1-dev-temp')
    await press(page, 'Limits from the last readings')
    await press(page, 'Put these into the plan')
    await page.getByText('Will be set by you when you sign').waitFor()
    await page.getByRole('link', { name: 'Look over and sign' }).click()
    await expect.poll(() => page.getByLabel('Why').inputValue()).toMatch(/^Developer temperature: limits from the last \d+ readings$/)
    await press(page, /^Sign /)
    await page.getByRole('heading', { name: 'Revisions' }).waitFor()
    await allSent(page)
    const revision = entries('plan').at(-1)!
    expect(revision).toMatchObject({ status: 'valid', data: { why: expect.stringMatching(/^Developer temperature: limits from the last/) as string } })
    const { checks } = revision.data.plan as { checks: { id: string; setBy: { kind: string; person?: string } }[] }
    expect(checks.find(({ id }) => id === 'neg-1-dev-temp')!.setBy).toMatchObject({ kind: 'laboratory', person: 'rosa-kern' })
  })

  it('names what is open on a part before it is taken out, and does not sign that away', async () => {
    await saveReading(page, '23.0', 'neg-1-fix-temp')
    await goTo(page, '/menu/plan/checks/neg-1-fix-temp')
    await press(page, /^Take .* out of the plan$/)
    const dialog = page.getByRole('dialog')
    await dialog.getByText('Something there is still open').waitFor()
    await dialog.getByRole('link', { name: /^Fixing bath 1/ }).waitFor()
    expect(await dialog.getByRole('button', { name: /^Take/ }).count()).toBe(0)
    await press(page, 'Close')
    // A file that leaves it out is looked over like any other change.
    const plan = entries('plan').at(-1)!.data.plan as { checks: { id: string }[] }
    const file = join(lab.folder, 'less.json')
    writeFileSync(file, JSON.stringify({ ...plan, checks: plan.checks.filter(({ id }) => id !== 'neg-1-fix-temp').map((check) => ('pairedWith' in check && check.pairedWith === 'neg-1-fix-temp' ? { ...check, pairedWith: undefined, pairedWithin: undefined } : check)) }))
    await goTo(page, '/menu/plan')
    await page.locator('input[type=file]').setInputFiles(file)
    await page.getByText('Something there is still open').first().waitFor()
    expect(await page.getByRole('button', { name: /^Sign / }).getAttribute('aria-disabled')).toBe('true')
    // From the next shift on it may be closed by then.
    await page.getByText(/^the next shift:/).click()
    await page.getByText('It must be closed, released or stopped by then', { exact: false }).waitFor()
    await goTo(page, '/menu/plan')
    await press(page, 'Drop all changes')
    await holdLine(page, /Hold to drop/)
    await saveReading(page, '21.0', 'neg-1-fix-temp')
  })

  it('counts a material, and tells what is left after the next dose', async () => {
    await goTo(page, '/menu/plan/materials/acetic-acid-28')
    await press(page, 'Add: stock')
    await page.getByLabel('Counted', { exact: true }).fill('3')
    await page.getByLabel('Order more at').fill('5')
    await page.getByRole('link', { name: 'Look over and sign' }).click()
    await press(page, /^Sign /)
    await page.getByRole('heading', { name: 'Revisions' }).waitFor()
    await goTo(page, '/menu/plan/materials')
    await page.getByRole('link', { name: /Acetic acid 28 %.*3\.00 L.*order more/s }).waitFor()
  })

  it('takes a caution of the laboratory’s own, which stands beside the app’s and cannot take the place of one', async () => {
    await goTo(page, '/menu/plan/cautions')
    await press(page, 'Add a caution')
    await page.getByRole('dialog').getByLabel('Name').fill('House rule for acid')
    await page.getByRole('dialog').getByRole('button', { name: 'Add a caution' }).click()
    await page.getByRole('heading', { level: 1, name: 'House rule for acid' }).waitFor()
    await page.getByLabel(/^Is added to/).selectOption({ label: 'Acetic acid solution, about 28 %' })
    await page.getByLabel('Must never happen').fill('Never from the balcony.')
    await page.getByRole('link', { name: 'Look over and sign' }).click()
    await press(page, /^Sign /)
    await page.getByRole('heading', { name: 'Revisions' }).waitFor()
    await goTo(page, '/safety/acetic-acid-28')
    await page.getByText('Never from the balcony.').waitFor()
    await page.getByText('the laboratory’s own words').waitFor()
    expect(await violations(page)).toEqual([])
  })

  // Common practice, no source: what was not keyed yet is not wrong yet.
  it('complains of a field when it was left or adding was tried, and not before', async () => {
    const needed = page.getByText('This is needed.')
    await goTo(page, '/menu/plan/new-machine')
    await page.getByLabel('Name', { exact: true }).waitFor()
    expect(await needed.count()).toBe(0)
    await page.getByLabel('Name', { exact: true }).focus()
    await page.getByLabel('Film', { exact: true }).focus()
    await needed.waitFor()
    await goTo(page, '/menu/plan')
    await goTo(page, '/menu/plan/new-machine')
    await page.getByLabel('Name', { exact: true }).waitFor()
    expect(await needed.count()).toBe(0)
    // Not enabled yet, and pressed all the same.
    await page.getByRole('button', { name: 'Add a machine' }).click({ force: true })
    await needed.waitFor()
    await page.getByText('It needs a name.').waitFor()
    await page.getByLabel('Name', { exact: true }).fill('Third machine')
    expect(await needed.count()).toBe(0)
    // A part that was just added has nothing in it: that is no fault until it is left, or met again.
    await goTo(page, '/menu/plan/cautions')
    await press(page, 'Add a caution')
    await page.getByRole('dialog').getByLabel('Name').fill('Bleach of the house')
    await page.getByRole('dialog').getByRole('button', { name: 'Add a caution' }).click()
    await page.getByRole('heading', { level: 1, name: 'Bleach of the house' }).waitFor()
    expect(await needed.count()).toBe(0)
    await page.getByLabel('Must never happen').focus()
    await page.getByLabel(/^What to wear/).focus()
    await needed.waitFor()
    await goTo(page, '/menu/plan/cautions/bleach-of-the-house')
    await needed.first().waitFor()
    await press(page, /^Take Bleach of the house out/)
    await holdLine(page, /Hold to take it out/)
    await page.getByRole('heading', { level: 1, name: 'Bleach of the house' }).waitFor({ state: 'detached' })
  })

  it('signs for the next shift, and until then the plan in force stays', async () => {
    await goTo(page, '/menu/plan/checks/neg-1-fix-ph')
    await page.getByLabel(limitField).fill('5.2')
    await page.getByRole('link', { name: 'Look over and sign' }).click()
    await page.getByText(/^the next shift:/).click()
    await press(page, /^Sign /)
    await page.getByRole('link', { name: /^takes effect/ }).waitFor()
    await saveReading(page, '5.1', 'neg-1-fix-ph')
    await allSent(page)
    expect(entries('reading').at(-1)).toMatchObject({ data: { check: 'neg-1-fix-ph', keyed: '5.1', verdict: 'ACT' } })
    // What was said of it is taken back, so that what follows starts from one plan.
    await goTo(page, '/menu/plan')
    await page.getByRole('link', { name: /by Rosa Kern/ }).nth(1).click()
    await press(page, 'Bring this plan back')
    await press(page, /^Sign /)
    await page.getByRole('heading', { name: 'Revisions' }).waitFor()
  })

  it('goes out as a file and comes back with the same bytes, on another phone or after other changes, and without a network', async () => {
    await allSent(page)
    const signed = entries('plan').length
    await goTo(page, '/menu/plan')
    const text = await saved('Save the plan as a file')
    const file = join(lab.folder, 'lab-plan.json')
    writeFileSync(file, text)
    await page.locator('input[type=file]').setInputFiles(file)
    await page.getByText('The file says what the plan says already.').waitFor()
    // Other limits are put in force, then the file is brought back.
    await goTo(page, '/menu/plan/checks/neg-1-fix-ph')
    await page.getByLabel(limitField).fill('4.95')
    await page.getByRole('link', { name: 'Look over and sign' }).click()
    await press(page, 'Sign this change')
    await page.getByRole('heading', { name: 'Revisions' }).waitFor()
    await page.context().setOffline(true)
    expect(await saved('Save the plan as a file')).not.toBe(text)
    await page.locator('input[type=file]').setInputFiles(file)
    await page.getByText('was 4.95', { exact: false }).waitFor()
    await press(page, /^Sign /)
    await page.getByRole('heading', { name: 'Revisions' }).waitFor()
    expect(await saved('Save the plan as a file')).toBe(text)
    await page.context().setOffline(false)
    await expect.poll(() => entries('plan').length, { timeout: 60_000 }).toBe(signed + 2)
    expect(entries('plan').every(({ status }) => status === 'valid')).toBe(true)
  })

  it('names what is wrong with a file, and changes nothing', async () => {
    const file = join(lab.folder, 'bad.json')
    writeFileSync(file, '{"format":')
    await page.locator('input[type=file]').setInputFiles(file)
    await page.getByText('This file is not JSON. Nothing was changed.').waitFor()
    const plan = JSON.parse(readFileSync(join(lab.folder, 'lab-plan.json'), 'utf8')) as { checks: { id: string; station: string }[] }
    plan.checks.find(({ id }) => id === 'neg-1-fix-ph')!.station = 'nowhere'
    writeFileSync(file, JSON.stringify(plan))
    await page.locator('input[type=file]').setInputFiles(file)
    await page.getByText('It names nowhere, which the plan does not have.', { exact: false }).waitFor()
  })

  it('is described by a schema that can be downloaded', async () => {
    const schema = await phone.fileOf(() => page.getByRole('link', { name: 'JSON Schema of the file' }).click())
    expect(JSON.parse(schema.toString())).toMatchObject({ $id: 'urn:bathkeeper:lab-plan:1' })
  })

  it('prints a label for every tank on A4, which a camera reads off the paper', { timeout: 240_000 }, async () => {
    await goTo(page, '/menu/labels')
    const labels = page.locator('.labels > li')
    await labels.first().waitFor()
    const count = await labels.count()
    const pdf = join(lab.folder, 'labels.pdf')
    writeFileSync(pdf, await page.pdf({ preferCSSPageSize: true }))
    const perPage = 8
    const browser = await chromium.launch({ executablePath, headless: true, args: ['--no-sandbox', '--disable-gpu'] })
    const read = new Set<string>()
    try {
      for (let sheet = 1; sheet <= Math.ceil(count / perPage); sheet++) {
        // A page of its own each time: the viewer goes to the page that its address names only when it opens.
        const viewer = await browser.newPage({ viewport: { width: 1000, height: 1414 } })
        await viewer.goto(`file://${pdf}#toolbar=0&navpanes=0&page=${sheet}&view=Fit`)
        // Until the viewer has fitted the page, it shows some of the next one as well.
        await expect.poll(async () => {
          for (const text of await codesIn(await viewer.screenshot())) read.add(text)
          return read.size
        }, { timeout: 60_000, interval: 500 }).toBeGreaterThanOrEqual(Math.min(count, sheet * perPage))
        await viewer.close()
      }
    } finally {
      await browser.close()
    }
    expect(read.size).toBe(count)
    for (const text of read) expect(text).toMatch(new RegExp(`^${lab.origin}/at/1/station/[a-z0-9-]+$`))
  })

  it.each(['/menu/plan', '/menu/plan/laboratory', '/menu/plan/people', '/menu/plan/machines/neg-1', '/menu/plan/stations/neg-1-fix', '/menu/plan/checks/neg-1-fix-ph', '/menu/plan/checks/neg-1-strip', '/menu/plan/materials/acetic-acid-28', '/menu/plan/methods/sulfite', '/menu/plan/formulas', '/menu/plan/cautions/house-rule-for-acid', '/menu/plan/new-machine', '/menu/plan/review'])('%s reads well for everybody', async (path) => {
    await goTo(page, path)
    await page.locator('.plan-desk').waitFor()
    expect(await violations(page)).toEqual([])
  })

  it('did all that within the content policy', () => expect(phone.complaints).toEqual([]))
})

/** Codes in a picture of a page: each is looked for in a part of its own, as the reader finds one a picture. Two columns, four rows. */
const codesIn = async (png: Buffer): Promise<string[]> => {
  const { data: whole, info: { width, height, channels } } = await sharp(png).ensureAlpha().raw().toBuffer({ resolveWithObject: true })
  const found: string[] = []
  for (let row = 0; row < 8; row++)
    for (let column = 0; column < 2; column++) {
      const part = { left: Math.floor((column * width) / 2), top: Math.floor((row * height) / 9), width: Math.floor(width / 2), height: Math.floor((2 * height) / 9) }
      const { data, info } = await sharp(whole, { raw: { width, height, channels } }).extract(part).raw().toBuffer({ resolveWithObject: true })
      const code = jsQR(new Uint8ClampedArray(data), info.width, info.height)
      if (code?.data) found.push(code.data)
    }
  return found
}

describe('the first use', () => {
  const lab = new Laboratory()
  let phone: Phone
  let page: Page
  beforeAll(async () => {
    await lab.start()
    phone = new Phone(lab.origin)
    page = await phone.open(`/#enrol=${lab.code}`)
  })
  afterAll(async () => {
    await phone.end()
    await lab.end()
  })

  it('leads from an empty server to the first saved reading of one’s own machine', { timeout: 240_000 }, async () => {
    const began = Date.now()
    await page.getByLabel('Name of this phone').fill('Machine room 1')
    await page.getByLabel('Your name').fill('Rosa Kern')
    await page.getByLabel('A passphrase of your own').fill('silver nitrate in the dark')
    await press(page, 'Go on')
    await press(page, 'A laboratory of your own')
    await page.getByLabel('Name of the laboratory').fill('Quayside')
    await page.getByLabel('Time zone').selectOption('Europe/Lisbon')
    await press(page, 'Next')
    await press(page, 'Next')
    await page.getByLabel('Speed').fill('120')
    const developer = page.getByRole('group', { name: 'Developer' })
    await developer.getByLabel('Volume').fill('800')
    await page.getByRole('checkbox', { name: /Silver cell/ }).uncheck()
    await press(page, 'Next')
    await page.getByLabel('Operator 1').fill('Ana Reis')
    await page.getByLabel('PIN', { exact: true }).fill('2468')
    await press(page, 'Make the laboratory')
    await page.getByRole('heading', { name: 'Your laboratory stands' }).waitFor({ timeout: 60_000 })
    await page.getByRole('link', { name: 'See and print the labels' }).click()
    await page.locator('.labels > li').first().waitFor()
    expect(await page.locator('.labels > li').count()).toBeGreaterThan(8)
    await goTo(page, '/menu/first')
    await press(page, /start the first round/)
    await page.waitForURL('**/round/**')
    await saveReading(page, '4.50', 'machine-1-fix-ph')
    await allSent(page)
    const record = new Database(join(lab.folder, 'bathkeeper.db'), { readonly: true })
    const rows = record.prepare('select kind, status, body from entries order by gseq').all() as { kind: string; status: string; body: string }[]
    record.close()
    expect(rows.map(({ kind, status }) => `${kind} ${status}`)).toEqual(['plan valid', 'run valid', 'reading valid'])
    const plan = (JSON.parse(rows[0]!.body) as { data: { plan: { name: string; machines: { aimMetresPerMinute: number; stations: { kind: string; bath?: { litres: number } }[] }[]; people: { name: string }[]; checks: { setBy: { kind: string } }[] } } }).data.plan
    expect(plan).toMatchObject({ name: 'Quayside', people: [{ name: 'Rosa Kern' }, { name: 'Ana Reis' }] })
    expect(plan.machines[0]!.aimMetresPerMinute).toBeCloseTo(120 * 0.3048, 9)
    expect(plan.machines[0]!.stations.find(({ kind }) => kind === 'developer')!.bath!.litres).toBe(800)
    expect(plan.checks.every(({ setBy }) => setBy.kind === 'startingValue')).toBe(true)
    // Of the ten minutes that a person may take, the machine's part.
    expect(Date.now() - began).toBeLessThan(180_000)
    expect(phone.complaints).toEqual([])
  })
})
