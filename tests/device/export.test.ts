import { afterEach, beforeEach, describe, expect, test } from 'vitest'
import { checkUnsentFile, makeUnsentFiles, readableRecord, unsentFileText } from '../../src/device/export.ts'
import type { Phone } from '../../src/device/open-phone.ts'
import { createWebVerifier, publicHalf } from '../../src/device/web-seal.ts'
import type { UnsentFile } from '../../src/wire/unsent-file.ts'
import { MemoryStore } from '../contract/memory-store.ts'
import { Laboratory, testPhone } from './laboratory.ts'
import { HandClock, saved } from './phone.ts'

let lab: Laboratory
let phone: Phone
const clock = new HandClock()
beforeEach(async () => {
  lab = await Laboratory.open(clock)
  phone = testPhone({ store: new MemoryStore(), fetch: lab.fetch, clock })
  await lab.letIn(phone, 'Phone of the night')
})
afterEach(() => lab.close())

const fileWith = async (count: number): Promise<UnsentFile> => {
  for (let written = 0; written < count; written++) await saved(phone.append, `n${written}`)
  return (await makeUnsentFiles(phone.store, (await phone.identity())!, clock))[0]!
}
const keyOf = async () => publicHalf((await phone.identity())!.keys)

describe('a file of what could not be sent', () => {
  test('nothing waits, no file', async () => {
    expect(await makeUnsentFiles(phone.store, (await phone.identity())!, clock)).toEqual([])
  })

  test('another phone hands it in; what is then sent by the first is a repeat', async () => {
    const file = await fileWith(450)
    expect(file).toMatchObject({ format: 'bathkeeper-unsent', name: 'Phone of the night', made: '2026-01-12T06:40:00.000+01:00' })
    const checked = await checkUnsentFile(unsentFileText(file), createWebVerifier(), keyOf)
    expect(checked).toEqual({ ok: true, file })
    const other = testPhone({ store: new MemoryStore(), fetch: lab.fetch, clock })
    await lab.letIn(other)
    const answered = await other.door.call('import', { body: file })
    expect(answered).toMatchObject({ ok: true, answer: { lastSeq: 450 } })
    expect((await phone.sender.sendNow()).problem).toBeUndefined()
    expect((await phone.store.waiting()).count).toBe(0)
    expect(await lab.entries()).toHaveLength(450)
  }, 20_000)

  test('more than one file may carry goes into several, and each follows on the one before', async () => {
    for (let written = 0; written < 25; written++) await saved(phone.append, `n${written}`)
    const identity = (await phone.identity())!
    const files = await makeUnsentFiles(phone.store, identity, clock, { entries: 10, bytes: 1e9 })
    expect(files.map(({ entries }) => entries.length)).toEqual([10, 10, 5])
    expect((await makeUnsentFiles(phone.store, identity, clock, { entries: 1e9, bytes: 2_000 })).length).toBeGreaterThan(5)
    const other = testPhone({ store: new MemoryStore(), fetch: lab.fetch, clock })
    await lab.letIn(other)
    for (const file of files) {
      expect(await checkUnsentFile(unsentFileText(file), createWebVerifier(), keyOf)).toMatchObject({ ok: true })
      expect(await other.door.call('import', { body: file })).toMatchObject({ ok: true })
    }
    expect(await lab.entries()).toHaveLength(25)
  })

  test('a file that was changed says where', async () => {
    const file = await fileWith(3)
    const check = (changed: unknown) => checkUnsentFile(JSON.stringify(changed), createWebVerifier(), keyOf)
    const bent = structuredClone(file)
    bent.entries[1]!.entry.data = { text: 'bent', about: 'general' }
    expect(await check(bent)).toEqual({ ok: false, problem: { code: 'entry', seq: 2, why: 'hash' } })
    expect(await check({ ...file, entries: [file.entries[0], file.entries[2]] })).toEqual({ ok: false, problem: { code: 'signature' } })
    expect(await checkUnsentFile(JSON.stringify({ ...file, entries: [file.entries[0], file.entries[2]] }), createWebVerifier(), async () => undefined)).toEqual({
      ok: false, problem: { code: 'entry', seq: 3, why: 'chain' },
    })
    expect(await check({ ...file, name: 'Another' })).toEqual({ ok: false, problem: { code: 'signature' } })
    expect(await checkUnsentFile('PK…', createWebVerifier(), keyOf)).toEqual({ ok: false, problem: { code: 'notAFile', detail: 'not JSON' } })
    expect(await check({ ...file, entries: 'many' })).toEqual({ ok: false, problem: { code: 'notAFile', detail: 'entries' } })
  })

  test('everything that can be read leaves the phone as lines of JSON', async () => {
    await fileWith(2)
    const lines = (await readableRecord(phone.store)).trim().split('\n').map((line) => JSON.parse(line) as { entry: { seq: number } })
    expect(lines.map(({ entry }) => entry.seq)).toEqual([1, 2])
  })
})
