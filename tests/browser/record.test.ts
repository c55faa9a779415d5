import { readdirSync, rmSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import Database from 'better-sqlite3'
import type { Page } from 'playwright-core'
import { afterAll, beforeAll, beforeEach, afterEach, describe, expect, it } from 'vitest'
import type { RecordFile } from '../../src/wire/record-file.ts'
import type { Phone as Device } from '../server/phone.ts'
import { runTerminal } from '../server/run-terminal.ts'
import { violationsInBothThemes } from './axe.ts'
import { allSent, found, goTo, Laboratory, Phone, press } from './harness.ts'
import { letIn } from './let-in.ts'

describe('the record as files', { timeout: 300_000 }, () => {
  const lab = new Laboratory()
  let phone: Phone
  let page: Page
  let device: Device
  let kept = ''

  const npm = (script: 'backup' | 'restore' | 'verify', ...args: string[]) => runTerminal(script, args, { BATHKEEPER_DATA: lab.folder })
  const onServer = (): string[] => {
    const record = new Database(join(lab.folder, 'bathkeeper.db'), { readonly: true })
    try {
      return (record.prepare('select id from entries order by id').all() as { id: string }[]).map(({ id }) => id)
    } finally {
      record.close()
    }
  }
  const download = async (name: RegExp): Promise<string> => {
    await page.getByText('Everything', { exact: true }).click()
    return (await phone.fileOf(() => press(page, name))).toString()
  }
  const bring = async (text: string): Promise<void> => {
    const file = join(lab.folder, 'brought.json')
    writeFileSync(file, text)
    await page.locator('input[type=file]').setInputFiles(file)
  }
  const row = (what: string): Promise<string> => page.locator('.row', { hasText: what }).first().locator('.value').innerText()

  beforeAll(async () => {
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

  it('are a table of everything and a file that the independent program finds whole', async () => {
    await device.push([device.entry('note', { text: 'before the backup', about: 'general' }, 'marta')])
    const backup = await npm('backup', join(lab.folder, 'kept.backup'))
    expect(backup.stderr).toBe('')
    await device.push(['one', 'two', 'three'].map((text) => device.entry('note', { text: `after the backup, ${text}`, about: 'general' }, 'marta')))
    await goTo(page, '/shift')
    await page.getByText('after the backup, three').first().waitFor()
    await goTo(page, '/record')
    expect(await violationsInBothThemes(page)).toEqual([])
    kept = await download(/^Record/)
    const { entries, devices } = JSON.parse(kept) as RecordFile
    expect([entries.length, devices.length]).toEqual([onServer().length, 2])
    const file = join(lab.folder, 'record.json')
    writeFileSync(file, kept)
    expect(await npm('verify', file)).toMatchObject({ status: 0, stdout: expect.stringContaining('Everything holds.') as string })
    const table = (await download(/^Table/)).split('\r\n')
    expect(table[0]).toMatch(/^time,entered,received,kind,.*,hash,signature$/)
    expect(table.filter((line) => line.includes('after the backup')).length).toBe(3)
    expect(await download(/^Record/)).toBe(kept)
  })

  it('give a server that was put back what it lost, and the export is then byte for byte the same', async () => {
    const before = onServer()
    await lab.stop()
    const restored = await npm('restore', join(lab.folder, 'kept.backup'))
    expect(restored.stderr).toBe('')
    await lab.start()
    await bring(kept)
    await page.getByRole('heading', { name: 'What was found' }).waitFor()
    expect([await row('In the record already'), await row('Missing here, and sound')]).toEqual([String(before.length - 3), '3'])
    expect(await page.locator('.row', { hasText: 'Left out' }).count()).toBe(0)
    expect(await violationsInBothThemes(page)).toEqual([])
    await press(page, 'Bring 3 entries back')
    await page.getByText('3 entries were brought back and are in the record.').waitFor()
    expect(onServer()).toEqual(before)
    expect(await download(/^Record/)).toBe(kept)
  })

  it('brought back once more say that there is nothing to do, and change nothing', async () => {
    const before = onServer()
    await bring(kept)
    await page.getByText('Everything in this file is in the record. There is nothing to do.').waitFor()
    expect(await page.getByRole('button', { name: /^Bring/ }).count()).toBe(0)
    expect(onServer()).toEqual(before)
  })

  it('that were changed, or are no export, say so and are not taken', async () => {
    const before = onServer()
    await bring(kept.replace('after the backup, two', 'after the backup, TWO'))
    await page.getByText('Left out: changed since they were sealed').waitFor()
    expect(await row('In the record already')).toBe(String(before.length - 1))
    expect(await page.getByRole('button', { name: /^Bring/ }).count()).toBe(0)
    await bring('{"format":"something else"}')
    await page.getByText('it stops being one at “format”', { exact: false }).waitFor()
    await bring('no JSON at all')
    await page.getByText('This file is no export: it is not JSON.').waitFor()
    expect(onServer()).toEqual(before)
  })

  it('of a server set up anew do not know this phone: the app says so, keeps what it has, and lets it in again', async () => {
    await lab.stop()
    for (const name of readdirSync(lab.folder)) rmSync(join(lab.folder, name), { recursive: true })
    await lab.start()
    await goTo(page, '/menu')
    await press(page, 'Send now')
    await page.getByRole('alert').getByText('The server does not know this phone').waitFor()
    expect(await violationsInBothThemes(page)).toEqual([])
    await goTo(page, '/now')
    await page.getByRole('alert').getByText('The server does not know this phone').waitFor()
    await press(page, 'Enrol this phone anew')
    await page.getByRole('heading', { name: 'A new laboratory' }).waitFor()
    await page.getByText('What this phone had not sent is kept').waitFor()
  })

  it('nothing broke the content policy, and no page failed', () => {
    expect(phone.complaints).toEqual([])
  })
})
