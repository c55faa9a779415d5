import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import type { Phone } from '../../src/device/open-phone.ts'
import { bringBack, lookThroughRecord, type RecordFound } from '../../src/device/record-import.ts'
import { recordText } from '../../src/device/record-export.ts'
import { createWebVerifier } from '../../src/device/web-seal.ts'
import { archiveOf } from '../../src/ui/boot/archive-of.ts'
import { recordFile } from '../../src/wire/record-file.ts'
import { verifyText } from '../../src/terminal/verify.ts'
import { MemoryStore } from '../contract/memory-store.ts'
import { Laboratory, testPhone } from './laboratory.ts'
import { HandClock, saved } from './phone.ts'

let lab: Laboratory
let clock: HandClock
beforeEach(async () => {
  clock = new HandClock()
  lab = await Laboratory.open(clock)
})
afterEach(() => lab.close())

const newPhone = async (): Promise<Phone> => {
  const phone = testPhone({ store: new MemoryStore(), fetch: lab.fetch, clock })
  await lab.letIn(phone)
  return phone
}
const write = (phone: Phone, text: string): ReturnType<typeof saved> => {
  clock.passes(60_000)
  return saved(phone.append, text)
}
const send = async (phone: Phone) => (await phone.sender.sendNow()).problem
const exported = async (phone: Phone, span: { from?: number; to?: number } = {}): Promise<string> => {
  const archive = archiveOf(phone)
  const text = await recordText(phone.store, { laboratory: 'Test', timeZone: 'Europe/Lisbon', ...span, serverKey: (await archive.server())!.key, devices: await archive.devices() })
  return text ?? ''
}
const looked = async (phone: Phone, text: string): Promise<RecordFound> => {
  const identity = await phone.identity()
  const looking = await lookThroughRecord(text, {
    store: phone.store, verifier: createWebVerifier(), devices: await archiveOf(phone).devices(), own: identity?.receipt.dev, epoch: (await phone.store.cursor())?.epoch,
  })
  if (!looking.ok) throw new Error(JSON.stringify(looking.problem))
  return looking.found
}
const ids = async (): Promise<string[]> => (await lab.entries()).map(({ id }) => id)

/** A record of two phones of which the server loses the last entries of one, whose phone is gone. */
const lost = async (): Promise<{ desk: Phone; text: string; before: string[] }> => {
  const [gone, desk] = [await newPhone(), await newPhone()]
  await write(gone, 'a')
  await write(desk, 'b')
  await send(gone)
  await send(desk)
  const backup = await lab.backUp()
  for (const text of ['c', 'd', 'e']) await write(gone, text)
  await send(gone)
  await write(desk, 'f')
  await send(desk)
  const text = await exported(desk)
  const before = await ids()
  await lab.restore(backup, true)
  await send(desk)
  return { desk, text, before }
}

describe('an export of the record', () => {
  it('gives the same bytes on every phone that has the same record, and again whenever it is made', async () => {
    const [one, other] = [await newPhone(), await newPhone()]
    await write(one, 'a')
    await write(other, 'b')
    await send(one)
    await send(other)
    await send(one)
    const text = await exported(one)
    expect(recordFile.parse(JSON.parse(text)).entries).toHaveLength(2)
    clock.passes(86_400_000)
    expect(await exported(one)).toBe(text)
    expect(JSON.parse(await exported(other)) as object).toEqual(JSON.parse(text))
  })

  it('of a span holds what was entered in it or speaks for it, each device in one unbroken run', async () => {
    const phone = await newPhone()
    const first = await write(phone, 'a')
    const from = clock.now
    await write(phone, 'b')
    await write(phone, 'c')
    const to = clock.now + 1
    await write(phone, 'd')
    const texts = (text: string): unknown[] => recordFile.parse(JSON.parse(text)).entries.map(({ entry }) => (entry['data'] as { text: string }).text)
    expect(texts(await exported(phone, { from: from + 1, to }))).toEqual(['b', 'c'])
    // Noted in the span, keyed after it: it speaks for the span, and what lies between proves the chain.
    clock.passes(60_000)
    const late = await phone.append('note', { text: 'e', about: 'general', notedAt: new Date(from + 2).toISOString() }, { person: null })
    expect(late.ok).toBe(true)
    expect(texts(await exported(phone, { from: from + 1, to }))).toEqual(['b', 'c', 'd', 'e'])
    expect(await exported(phone, { from: 0, to: first.time - 1 })).toBe('')
  })

  it('is checked by the independent program, and one changed letter is found', async () => {
    const phone = await newPhone()
    await write(phone, 'looked at the squeegee')
    const text = await exported(phone)
    expect(verifyText(text)).toMatchObject({ status: 0, says: expect.arrayContaining(['Everything holds.']) as string[] })
    expect(verifyText(text.replace('squeegee', 'squeegees'))).toMatchObject({ status: 1, says: expect.arrayContaining([expect.stringMatching(/^Line 2: entry \S+ is not what was hashed/)]) as string[] })
  })
})

describe('an export that is brought back', () => {
  it('gives a server what it lost, and the record is then byte for byte what it was', async () => {
    const { desk, text, before } = await lost()
    const found = await looked(desk, text)
    expect(found).toMatchObject({ entries: 6, devices: 2, left: [] })
    expect(found.missing.map(({ entries }) => entries.length)).toEqual([3])
    const told: string[] = []
    expect(await bringBack(found, desk.door, (done, of) => told.push(`${done} of ${of}`))).toEqual({ brought: 3, refused: [] })
    expect(told).toEqual(['0 of 3', '3 of 3'])
    expect(await send(desk)).toBeUndefined()
    expect([...(await ids())].sort()).toEqual([...before].sort())
    expect((await lab.entries()).every(({ status }) => status === 'valid')).toBe(true)
    expect(await exported(desk)).toBe(text)
  })

  it('twice, or where nothing is missing, changes nothing', async () => {
    const { desk, text } = await lost()
    const found = await looked(desk, text)
    await bringBack(found, desk.door)
    const [after, reach] = [await ids(), (await lab.entries()).length]
    // The same once more, from what was found before.
    expect(await bringBack(found, desk.door)).toEqual({ brought: 3, refused: [] })
    await send(desk)
    expect(await looked(desk, text)).toMatchObject({ here: 6, missing: [], left: [] })
    expect([await ids(), (await lab.entries()).length]).toEqual([after, reach])
  })

  it('never overwrites: another entry at the same number, a changed one, a stranger’s and one that nothing leads up to are left out and named', async () => {
    const { desk, text } = await lost()
    const file = recordFile.parse(JSON.parse(text))
    const gone = file.entries.filter(({ entry }) => (entry['data'] as { text: string }).text === 'a')[0]!.entry.dev
    const own = file.entries.filter(({ entry }) => entry.dev === gone)
    const others = file.entries.filter(({ entry }) => entry.dev !== gone)
    const changed = { ...own[1]!, entry: { ...own[1]!.entry, data: { text: 'C', about: 'general' } } }
    const stranger = { ...others[0]!, entry: { ...others[0]!.entry, dev: 'f'.repeat(16) as never } }
    const again = { ...others[0]!, h: own[0]!.h }
    const found = await looked(desk, JSON.stringify({ ...file, entries: [own[0], changed, own[2], stranger, again, others[1]] }))
    expect(found.left.map(({ seq, why }) => [seq, why])).toEqual([[2, 'hash'], [3, 'gap'], [1, 'unknownDevice'], [1, 'conflict']])
    expect(found).toMatchObject({ here: 2, missing: [] })
    const before = await ids()
    expect(await bringBack(found, desk.door)).toEqual({ brought: 0, refused: [] })
    expect(await ids()).toEqual(before)
  })

  it('that was changed where the record has the entry is not taken for the same', async () => {
    const { desk, text } = await lost()
    await bringBack(await looked(desk, text), desk.door)
    await send(desk)
    expect(await looked(desk, text.replace('"text":"d"', '"text":"D"'))).toMatchObject({ here: 5, missing: [], left: [{ seq: 3, why: 'hash' }] })
  })

  it('is refused as a whole where it is no export, with the place at which it stops being one', async () => {
    const { desk, text } = await lost()
    const around = { store: desk.store, verifier: createWebVerifier(), devices: [], own: undefined, epoch: undefined }
    expect(await lookThroughRecord('{', around)).toEqual({ ok: false, problem: { code: 'notJson' } })
    expect(await lookThroughRecord('{"format":"other"}', around)).toEqual({ ok: false, problem: { code: 'notARecord', path: 'format' } })
    expect(await lookThroughRecord(text.replace('"seq":1', '"seq":0'), around)).toMatchObject({ ok: false, problem: { code: 'notARecord', path: expect.stringMatching(/^entries\.\d+\.entry\.seq$/) as string } })
  })

  it('from a device that is let in and no other; of a device that the server does not know nothing is taken', async () => {
    const { desk, text } = await lost()
    const found = await looked(desk, text)
    const [missing] = found.missing
    const asStranger = { ...found, missing: [{ ...missing!, dev: 'f'.repeat(16) as never }] }
    expect(await bringBack(asStranger, desk.door)).toEqual({ brought: 0, refused: [{ dev: 'f'.repeat(16), code: 'notFound' }] })
  })
})
