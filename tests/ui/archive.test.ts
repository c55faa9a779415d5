import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { demoHistory } from '../../src/demo/history.ts'
import { demoLab } from '../../src/demo/lab.ts'
import { appendable } from '../../src/demo/draft.ts'
import type { Phone } from '../../src/device/open-phone.ts'
import type { PersonId } from '../../src/plan/ids.ts'
import { shiftAt, type ShiftSpan } from '../../src/plan/shift-time.ts'
import type { Lab } from '../../src/projections/lab.ts'
import { shiftPage } from '../../src/projections/shift-page.ts'
import type { EntryId } from '../../src/record/ids.ts'
import type { DataOf, Kind } from '../../src/record/kinds.ts'
import { checkShift } from '../../src/terminal/verify/check-shift.ts'
import { archiveOf } from '../../src/ui/boot/archive-of.ts'
import { keepLab } from '../../src/ui/boot/keep-lab.ts'
import { shiftCsv, shiftProof } from '../../src/ui/shift/shift-export.ts'
import { shiftFile } from '../../src/wire/shift-file.ts'
import { MemoryStore } from '../contract/memory-store.ts'
import { Laboratory, testPhone } from '../device/laboratory.ts'
import { HandClock } from '../device/phone.ts'

const day = 86_400_000
const plan = demoLab()
const supervisor = plan.people.find(({ role }) => role === 'supervisor')!.id

/** Where two values first differ, as a path: a whole laboratory printed twice says nothing to anybody. */
const difference = (a: unknown, b: unknown, path = ''): string | undefined => {
  if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null) return Object.is(a, b) ? undefined : `${path}: ${JSON.stringify(a)} and ${JSON.stringify(b)}`
  for (const key of new Set([...Object.keys(a), ...Object.keys(b)])) {
    const found = difference((a as Record<string, unknown>)[key], (b as Record<string, unknown>)[key], `${path}/${key}`)
    if (found) return found
  }
  return undefined
}
const plain = (lab: Lab): unknown => JSON.parse(JSON.stringify([lab.state, lab.ledger.lines]))
const stateOf = (lab: Pick<Lab, 'state'>): unknown => JSON.parse(JSON.stringify(lab.state))

describe('a phone that starts from a snapshot', { timeout: 120_000 }, () => {
  let laboratory: Laboratory
  let phone: Phone
  let clock: HandClock
  let span: ShiftSpan
  const fail = (thrown: unknown): never => {
    throw thrown
  }
  const append = async <K extends Kind>(kind: K, data: DataOf<K>, person: PersonId | null): Promise<EntryId> => {
    const appended = await phone.append(kind, data, { person })
    if (!appended.ok) throw new Error(JSON.stringify(appended.refusal))
    return appended.saved.entry.id
  }

  beforeAll(async () => {
    const now = Date.UTC(2026, 0, 22, 10)
    const ago = now - 13 * day
    clock = new HandClock(ago)
    laboratory = await Laboratory.open(clock)
    phone = testPhone({ store: new MemoryStore(), fetch: laboratory.fetch, clock })
    await laboratory.letIn(phone)
    const planEntry = await append('plan', { plan, effectiveFrom: ago - 3 * day }, supervisor)
    const became = new Map<EntryId, EntryId>()
    const drafts = demoHistory({ seed: 7, plan, planEntry, until: ago + day, shifts: 2 })
    for (const draft of drafts) {
      clock.now = Math.max(clock.now + 1, draft.time)
      const { kind, data } = appendable(draft, became)
      became.set(draft.id, await append(kind, data, draft.person))
    }
    for (let written = drafts.length; written < 2_200; written++) {
      clock.passes(60_000)
      await append('note', { text: `so many lines that a snapshot is worth it: ${written}`, about: 'general' }, null)
    }
    span = shiftAt(plan, ago + 12 * 3_600_000)
    clock.now = Math.max(clock.now, span.to) + 3_600_000
    const { lab } = await keepLab(phone.book, () => ago, fail)
    const page = shiftPage({ lab: lab.value.log, plan, span, now: clock.now, isGated: () => true })
    const { sha256 } = archiveOf(phone)
    await append(
      'signOff',
      {
        shift: span.shift.id, date: span.date, from: span.from, to: span.to, covers: page.covers, digest: await sha256(page.digestText), openItems: [],
        meaning: 'reviewedAndReleased', provisional: true,
      } as unknown as DataOf<'signOff'>,
      supervisor,
    )
    await phone.sender.sendNow()
    clock.now = now
    await append('note', { text: 'today', about: 'general' }, null)
  })
  afterAll(() => laboratory.close())

  it('has only the last days in memory, and tells the same laboratory as one that read everything', async () => {
    await keepLab(phone.book, clock.wall, fail)
    await expect.poll(() => phone.store.keys('snapshots')).toEqual(['lab'])
    const { lab, whole: isRead } = await keepLab(phone.book, clock.wall, fail)
    const [first] = lab.value.log.plan(clock.now)!.plan.people
    expect(first!.id).toBe(plan.people[0]!.id)
    await isRead
    const { log } = lab.value
    expect(log.linesBefore).toBeGreaterThan(2_000)
    expect(log.ledger.lines.length).toBeLessThan(10)
    const whole = await archiveOf(phone).whole()
    expect(whole.linesBefore).toBe(0)
    expect(whole.ledger.lines).toHaveLength(log.linesBefore + log.ledger.lines.length)
    expect(difference(stateOf(log), stateOf(whole))).toBeUndefined()
  })

  it('proves a shift that lies before it, from the whole log, to a checker that knows nothing of this phone', async () => {
    const { lab } = await keepLab(phone.book, clock.wall, fail)
    expect(lab.value.log.ledger.indexAt(span.to)).toBe(0)
    const archive = archiveOf(phone)
    const { ledger } = await archive.whole()
    const file = shiftFile.parse(JSON.parse(await shiftProof({ ledger, plan, span, archive }, clock.now)))
    const checked = checkShift(file)
    expect(checked.bad).toEqual([])
    expect(checked.signatures).toMatchObject([{ person: supervisor, isProvisional: true, late: 0 }])
    expect(checked.signatures[0]!.covered).toBeGreaterThan(20)
    const rows = (await shiftCsv({ ledger, plan, span, archive }, new Set())).trim().split('\r\n')
    expect(rows.length).toBeGreaterThan(20)
    expect(rows.slice(1).filter((row) => !/,[0-9a-f]{64},[\w-]{86}$/.test(row))).toEqual([])
  })

  it('drops what the server does not count, though it lay in the snapshot, and stays so when started again', async () => {
    const { lab, whole, stop } = await keepLab(phone.book, clock.wall, fail)
    await whole
    expect(lab.value.log.linesBefore).toBeGreaterThan(2_000)
    const [row] = await phone.store.ofKind('note', { to: clock.now - 9 * day, newestFirst: true, limit: 1 })
    const cursor = (await phone.store.cursor())!
    const uncounted = { ...row!, status: 'invalid' as const, why: 'role' }
    const { changed } = await phone.store.apply({ from: cursor, entries: [uncounted], devices: [], next: { ...cursor, after: cursor.after + 1 } })
    expect(changed).toHaveLength(1)
    phone.book.tell(changed)
    await expect.poll(() => lab.value.log.linesBefore, { timeout: 30_000 }).toBe(0)
    expect(lab.value.log.ledger.line(row!.entry.id)).toBeUndefined()
    const again = await keepLab(phone.book, clock.wall, fail)
    await again.whole
    expect(difference(plain(await archiveOf(phone).whole()), plain(lab.value.log))).toBeUndefined()
    expect(difference(stateOf(again.lab.value), stateOf(lab.value))).toBeUndefined()
    again.stop()
    stop()
  })

  it('loses nothing that is saved while the log is being read anew', async () => {
    const { lab, whole, stop } = await keepLab(phone.book, clock.wall, fail)
    await whole
    const [row] = await phone.store.ofKind('note', { to: clock.now - 10 * day, newestFirst: true, limit: 1 })
    const cursor = (await phone.store.cursor())!
    const { changed } = await phone.store.apply({ from: cursor, entries: [{ ...row!, status: 'invalid', why: 'role' }], devices: [], next: { ...cursor, after: cursor.after + 1 } })
    phone.book.tell(changed)
    const ids: EntryId[] = []
    for (let written = 0; written < 20; written++) ids.push(await append('note', { text: `meanwhile ${written}`, about: 'general' }, null))
    await expect.poll(() => ids.filter((id) => !lab.value.log.ledger.line(id)), { timeout: 30_000 }).toEqual([])
    expect(lab.value.log.ledger.line(row!.entry.id)).toBeUndefined()
    stop()
  })
})
