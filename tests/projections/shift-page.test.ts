import { createHash } from 'node:crypto'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { arrivedFrom } from '../../src/demo/draft.ts'
import { demoHistory } from '../../src/demo/history.ts'
import { demoLab } from '../../src/demo/lab.ts'
import { shiftAt, type ShiftSpan } from '../../src/plan/shift-time.ts'
import { Lab } from '../../src/projections/lab.ts'
import { labAsSigned } from '../../src/projections/as-signed.ts'
import { canBeSettled, openItemOf, ownExceptions } from '../../src/projections/shift-blockers.ts'
import { digestText, signedLines } from '../../src/projections/shift-lines.ts'
import { shiftPage, type ShiftPage } from '../../src/projections/shift-page.ts'
import { standingSignature } from '../../src/projections/shift-signatures.ts'
import type { EntryId, Hash } from '../../src/record/ids.ts'
import type { DataOf } from '../../src/record/kinds.ts'
import { hour, idOf, LabLog, minute, person, phone, smallPlan } from './log.ts'

const plan = smallPlan(demoLab(), 'neg-1-fix-ph', 'neg-1-scratches', 'neg-1-strip', 'ph-meter')
const start = Date.parse('2026-01-12T06:00:00Z')
const at = (minutes: number): number => start + minutes * minute
const span: ShiftSpan = shiftAt(plan, start)
const after = span.to + 30 * minute
const give = (log: LabLog, side: 'given' | 'accepted', open: EntryId[] = [], minutes = 485): EntryId =>
  log.say({ kind: 'handover', data: { shift: span.shift.id, date: span.date, notes: 'all well', open, side }, at: at(minutes), person: side === 'given' ? 'marta' : 'tomas' })

/** A shift in which everything due was done. */
const goodShift = (): LabLog => {
  const log = new LabLog(plan, start - hour)
  log.run('neg-1', 'running', at(0), 30.48)
  log.look('ph-meter', true, at(1))
  for (const minutes of [2, 240]) log.reading('neg-1-fix-ph', 4.5, at(minutes))
  for (let minutes = 0; minutes < 480; minutes += 58) log.look('neg-1-scratches', true, at(minutes))
  for (let minutes = 0; minutes < 480; minutes += 118) log.strip('neg-1-strip', 'IN', at(minutes))
  return log
}
const pageOf = (log: LabLog, now = after): ShiftPage => shiftPage({ lab: log.lab(), plan, span, now })
const blockers = (log: LabLog, now = after): string[] => pageOf(log, now).blockers.map(({ code }) => code)

describe('a shift that can be signed', () => {
  it('has nothing in the way once it is over and handed over', () => {
    const log = goodShift()
    expect(blockers(log)).toEqual(['handoverNotGiven'])
    give(log, 'given')
    expect(blockers(log)).toEqual(['handoverNotAccepted'])
    give(log, 'accepted', [], 490)
    expect(blockers(log)).toEqual([])
    expect(pageOf(log).coverage.counts).toMatchObject({ missed: 0, late: 0, overdue: 0 })
  })

  it('is not signed while it runs', () => {
    expect(blockers(goodShift(), at(479))).toContain('shiftRunning')
  })

  it('tells how much film ran', () => {
    // 8 h at 100 ft/min: 48,000 ft.
    expect(pageOf(goodShift()).metres[plan.machines[0]!.id]! / 0.3048).toBeCloseTo(48_000, 3)
  })
})

describe('what is in the way of a signature', () => {
  const signable = (): LabLog => {
    const log = goodShift()
    give(log, 'given')
    give(log, 'accepted', [], 490)
    return log
  }

  it('a check that was missed, until somebody says why', () => {
    const log = signable()
    const gone = log.lab().ledger.lines.find((line) => line.kind === 'reading' && line.time === at(240))!
    log.say({ kind: 'withdraw', data: { ref: gone.id, why: 'wrong machine' }, at: at(300) })
    const [missed] = pageOf(log).blockers
    expect(missed).toEqual({ code: 'missedWithoutReason', check: 'neg-1-fix-ph', due: at(242) })
    log.say({ kind: 'skip', data: { check: 'neg-1-fix-ph' as never, due: at(242), reason: 'sampleLost' }, at: at(495) })
    expect(blockers(log)).toEqual([])
    expect(pageOf(log).coverage.counts.missedWithReason).toBe(1)
  })

  it('an exception without a hand-over, and not one that the hand-over names', () => {
    const log = goodShift()
    const first = log.reading('neg-1-fix-ph', 4.92, at(400))
    log.reading('neg-1-fix-ph', 4.92, at(402))
    give(log, 'given')
    give(log, 'accepted', [], 490)
    expect(pageOf(log).blockers).toEqual([{ code: 'exceptionOpen', ref: first }])
    give(log, 'given', [first], 491)
    // What was accepted before did not name it.
    expect(blockers(log)).toEqual(['handoverNotAccepted'])
    give(log, 'accepted', [first], 492)
    expect(blockers(log)).toEqual([])
  })

  it('a hand-over that the same person gave and accepted', () => {
    const log = goodShift()
    give(log, 'given')
    log.say({ kind: 'handover', data: { shift: span.shift.id, date: span.date, notes: '', open: [], side: 'accepted' }, at: at(490), person: 'marta' })
    expect(blockers(log)).toEqual(['handoverNotAccepted'])
  })

  it('a hold that stands', () => {
    const log = signable()
    const hold = log.say({ kind: 'hold', data: { machine: 'neg-1' as never, reason: 'scratch' }, at: at(300) })
    expect(pageOf(log).blockers).toEqual([{ code: 'holdOpen', ref: hold }])
    log.say({ kind: 'release', data: { hold, reason: 'clean' }, at: at(320), person: 'helena' })
    expect(blockers(log)).toEqual([])
    expect(pageOf(log).holds).toMatchObject([{ minutes: 20, isCarriedOver: false }])
  })

  it('an add without its re-check, without its caution', () => {
    const log = signable()
    const first = log.reading('neg-1-fix-ph', 4.92, at(400))
    log.reading('neg-1-fix-ph', 4.92, at(402))
    const dose = log.acid(first, at(410))
    expect(pageOf(log).blockers).toEqual([
      { code: 'exceptionOpen', ref: first },
      { code: 'addWithoutRecheck', ref: dose },
      { code: 'addWithoutCaution', ref: dose },
    ])
    log.reading('neg-1-fix-ph', 4.5, at(430))
    expect(blockers(log)).toEqual(['addWithoutCaution'])
  })

  it('not where the caution was confirmed before it was poured, or stands beside the amount', () => {
    const log = signable()
    const first = log.reading('neg-1-fix-ph', 4.92, at(400))
    log.reading('neg-1-fix-ph', 4.92, at(402))
    const caution = log.say({ kind: 'caution', data: { card: 'acetic-acid-28', version: 1, exception: first, lines: ['sulfite'] }, at: at(405) })
    const dose = log.acid(first, at(410), { caution, lot: 'A 17' })
    const recheck = log.reading('neg-1-fix-ph', 4.5, at(430), { recheckOf: first })
    expect(blockers(log)).toEqual([])
    const page = pageOf(log)
    expect(page.cautions.map(({ id }) => id)).toEqual([caution])
    expect(page.adds).toMatchObject([{ id: dose, recheck, caution, lot: 'A 17', person: 'marta' }])
    const open = goodShift()
    open.acid(undefined, at(100))
    expect(shiftPage({ lab: open.lab(), plan, span, now: after, isGated: () => false }).blockers.map(({ code }) => code)).not.toContain('addWithoutCaution')
  })

  it('an add that answers no exception is re-checked by the next reading in that bath after mixing', () => {
    const log = goodShift()
    log.acid(undefined, at(230))
    expect(pageOf(log).adds[0]?.recheck).toBeUndefined()
    const next = log.reading('neg-1-fix-ph', 4.5, at(250))
    expect(pageOf(log).adds[0]?.recheck).toBe(next)
  })

  it('a material that asks for a second person, poured by one alone', () => {
    const strict = { ...plan, materials: plan.materials.map((it) => ({ ...it, secondPerson: true })) }
    const log = new LabLog(strict, start - hour)
    log.acid(undefined, at(10))
    log.acid(undefined, at(20), { secondPerson: person('marta') })
    log.acid(undefined, at(30), { secondPerson: person('tomas') })
    const codes = shiftPage({ lab: log.lab(), plan: strict, span, now: after }).blockers.map(({ code }) => code)
    expect(codes.filter((code) => code === 'addWithoutSecondPerson')).toHaveLength(2)
  })

  it('a strip that went in and was not read', () => {
    const log = goodShift()
    log.run('neg-1', 'running', at(479), 30.48)
    const last = log.lab().ledger.lines.filter((line) => line.kind === 'strip').at(-1)!
    log.say({ kind: 'withdraw', data: { ref: last.id, why: 'fogged' }, at: at(478) })
    expect(blockers(log, at(481))).toContain('stripUnread')
  })

  it('readings with a meter that nobody proved', () => {
    const log = signable()
    const proof = log.lab().ledger.lines.find((line) => line.kind === 'look' && line.data.check === ('ph-meter' as string))!
    log.say({ kind: 'withdraw', data: { ref: proof.id, why: 'not done' }, at: at(300) })
    expect(pageOf(log).blockers).toContainEqual({ code: 'instrumentNotProved', check: 'ph-meter' })
    expect(pageOf(log).instruments).toMatchObject([{ instrument: 'pH meter', state: 'never', readings: 2 }])
  })

  it('a reading changed by somebody who neither made it nor supervises', () => {
    const log = signable()
    const reading = log.lab().ledger.lines.find((line) => line.kind === 'reading')!
    const amend = (by: string): EntryId =>
      log.say({ kind: 'amend', data: { ref: reading.id, data: log.readingData('neg-1-fix-ph', 4.51), why: 'misread' }, at: at(300), person: by })
    const own = amend('marta')
    amend('helena')
    expect(blockers(log)).toEqual([])
    const other = amend('tomas')
    expect(pageOf(log).blockers).toEqual([{ code: 'changedByAnother', ref: other }])
    expect(pageOf(log).changes.map(({ isByRight }) => isByRight)).toEqual([true, true, false])
    expect(own).not.toBe(other)
  })

  it('a verdict that the plan does not give', () => {
    const log = signable()
    const wrong = log.say({ kind: 'reading', data: { ...log.readingData('neg-1-fix-ph', 4.95), verdict: 'IN' }, at: at(300) })
    expect(pageOf(log).blockers).toEqual([{ code: 'verdictDiffers', ref: wrong }])
  })

  it('old readings are judged by the plan that they name, not by a later one', () => {
    const log = signable()
    const tighter = { ...plan, checks: plan.checks.map((check) => (check.kind === 'reading' ? { ...check, limits: { aim: 4.4, actionLow: 4.39, actionHigh: 4.41 } } : check)) }
    log.say({ kind: 'plan', data: { plan: tighter, effectiveFrom: at(470) }, at: at(470), person: 'helena' })
    expect(blockers(log)).toEqual([])
  })
})

describe('what nobody can put right', () => {
  it('is named by the signature instead of being in its way: a caution that was not confirmed, an add where nothing is read', () => {
    const log = goodShift()
    log.say({ kind: 'add', data: { station: 'neg-1-dryer' as never, material: 'water', portion: 1, poured: { amount: 1, unit: 'L', keyed: '1' }, mixSeconds: 0 }, at: at(20) })
    const dose = log.acid(undefined, at(100))
    log.reading('neg-1-fix-ph', 4.5, at(130))
    const found = pageOf(log).blockers
    expect(found.filter((it) => !canBeSettled(it)).map(({ code }) => code)).toEqual(['addNotCheckable', 'addWithoutCaution'])
    expect(openItemOf(found.find(({ code }) => code === 'addWithoutCaution')!)).toEqual({ code: 'addWithoutCaution', ref: dose })
    expect(canBeSettled({ code: 'holdOpen', ref: dose })).toBe(true)
    expect(openItemOf({ code: 'missedWithoutReason', check: 'neg-1-fix-ph', due: at(242) })).toEqual({ code: 'missedWithoutReason', ref: 'neg-1-fix-ph 2026-01-12T10:02:00.000Z' })
  })

  it('a strip that was out and not repeated is repeated, not handed over', () => {
    const log = goodShift()
    const out = log.say({ kind: 'strip', data: { check: 'neg-1-strip' as never, plan: log.planId, densities: {}, figures: { gamma: 0.9 }, verdict: 'ACT' }, at: at(476) })
    give(log, 'given', [out])
    give(log, 'accepted', [out], 490)
    expect(pageOf(log).blockers).toEqual([{ code: 'stripNotRepeated', ref: out }])
    log.strip('neg-1-strip', 'IN', at(495))
    expect(blockers(log)).toEqual([])
  })
})

describe('the shift page', () => {
  it('lists what was out of limits with its action, its re-check and the minutes it was open', () => {
    const log = goodShift()
    const first = log.reading('neg-1-fix-ph', 4.92, at(250))
    log.reading('neg-1-fix-ph', 4.91, at(252))
    log.acid(first, at(260))
    const recheck = log.reading('neg-1-fix-ph', 4.52, at(280))
    const [row] = pageOf(log).exceptions
    expect(row).toMatchObject({ isOpen: false, isCarriedOver: false, minutesOpen: 30, recheck })
    // From the good reading at 240 to the re-check at 280: 40 min at 100 ft/min.
    expect(row!.filmAtRisk.metres / 0.3048).toBeCloseTo(4000, 3)
  })

  it('carries over what was open before it began', () => {
    const log = goodShift()
    const first = log.reading('neg-1-fix-ph', 4.92, at(-30))
    log.reading('neg-1-fix-ph', 4.92, at(-28))
    expect(pageOf(log).exceptions[0]).toMatchObject({ isCarriedOver: true, exception: { id: first } })
  })

  it('adds up what was poured, by material, with its lots', () => {
    const log = goodShift()
    log.acid(undefined, at(20), { poured: { amount: 2.5, unit: 'L', keyed: '2.5' }, lot: 'A 17' })
    log.acid(undefined, at(60), { poured: { amount: 350, unit: 'mL', keyed: '350' }, lot: 'A 18' })
    log.acid(undefined, at(70), { material: 'water', poured: { amount: 12, unit: 'L', keyed: '12' } })
    expect(pageOf(log).totals).toMatchObject([
      { material: 'water', total: 12_000, unit: 'mL', lots: [] },
      { material: 'acetic-acid-28', total: 2850, unit: 'mL', lots: ['A 17', 'A 18'] },
    ])
  })

  it('marks what was keyed long after it was noted', () => {
    const log = goodShift()
    const late = log.reading('neg-1-fix-ph', 4.5, at(100), { notedAt: new Date(at(50)).toISOString() })
    log.reading('neg-1-fix-ph', 4.5, at(130), { notedAt: new Date(at(110)).toISOString() })
    expect(pageOf(log).lateEntries).toEqual([late])
  })

  it('knows whose own exceptions a signer would release', () => {
    const log = goodShift()
    const first = log.reading('neg-1-fix-ph', 4.92, at(250), {}, { person: 'helena' })
    log.reading('neg-1-fix-ph', 4.91, at(252))
    expect(ownExceptions(pageOf(log), person('helena'))).toEqual([first])
    expect(ownExceptions(pageOf(log), person('marta'))).toEqual([])
  })

  it('of the demo’s shifts has adds, strips, cautions, a hold, notes and a hand-over', () => {
    const demo = demoLab()
    const until = Date.parse('2026-01-13T10:20:00Z')
    const history = demoHistory({ seed: 7, plan: demo, planEntry: idOf(1), until })
    const lab = new Lab()
    lab.add([...new LabLog(demo, history[0]!.time - 1).arrived, ...arrivedFrom(history, phone('d'))])
    const early = shiftPage({ lab, plan: demo, span: shiftAt(demo, history[0]!.time), now: until })
    const late = shiftPage({ lab, plan: demo, span: shiftAt(demo, early.span.to), now: until })
    expect(early.adds.length).toBeGreaterThan(0)
    expect(early.cautions.length).toBeGreaterThan(0)
    expect(early.strips.length).toBeGreaterThan(4)
    expect(late.holds).toHaveLength(1)
    expect(late.handover.given?.data.side).toBe('given')
    expect([...early.blockers, ...late.blockers].filter(({ code }) => code === 'addWithoutRecheck' || code === 'verdictDiffers' || code === 'holdOpen')).toEqual([])
  })
})

describe('a signature', () => {
  const sha256 = (text: string): Hash => createHash('sha256').update(text, 'utf8').digest('hex') as Hash
  const sign = (log: LabLog, minutes: number, more: Partial<DataOf<'signOff'>> = {}): EntryId => {
    const page = pageOf(log)
    return log.say({
      kind: 'signOff',
      data: {
        shift: span.shift.id, date: span.date, from: span.from, to: span.to, covers: page.covers, digest: sha256(page.digestText), openItems: [], meaning: 'reviewedAndReleased', provisional: false, ...more,
      },
      at: at(minutes), person: 'helena', dev: phone('s'),
    })
  }

  it('once given, the page it was given under reads the same whatever comes in later', () => {
    const log = goodShift()
    const first = log.reading('neg-1-fix-ph', 4.92, at(400))
    log.reading('neg-1-fix-ph', 4.92, at(402))
    give(log, 'given', [first])
    give(log, 'accepted', [first], 490)
    const before = pageOf(log, at(500))
    sign(log, 500)
    // The next shift closes the exception, another phone brings a reading of this one, and somebody amends what was signed.
    log.reading('neg-1-fix-ph', 4.5, at(560))
    log.reading('neg-1-fix-ph', 4.6, at(300), {}, { dev: phone('b') })
    log.reading('neg-1-fix-ph', 4.6, at(530), {}, { dev: phone('b') })
    const reading = log.lab().ledger.lines.find((line) => line.kind === 'reading')!
    log.say({ kind: 'amend', data: { ref: reading.id, data: log.readingData('neg-1-fix-ph', 4.6), why: 'misread' }, at: at(600) })
    const lab = log.lab()
    const [signature] = pageOf(log).signatures
    const signed = shiftPage({ lab: labAsSigned(lab, signature!), plan, span, now: signature!.time })
    expect(signed).toEqual(before)
    expect(shiftPage({ lab, plan, span, now: at(500) })).not.toEqual(before)
  })

  it('covers every device by the last number that the signer knew of it', () => {
    const log = goodShift()
    log.reading('neg-1-fix-ph', 4.5, at(510), {}, { dev: phone('b') })
    const seqs = log.arrived.filter(({ entry }) => entry.dev === phone('a')).length
    expect(pageOf(log).covers).toEqual({ [phone('a')]: seqs, [phone('b')]: 1 })
  })

  it('given without the server is provisional until it is given again over the same digest', () => {
    const log = goodShift()
    const first = sign(log, 500, { provisional: true })
    expect(standingSignature(pageOf(log).signatures)).toMatchObject({ signature: { id: first }, isProvisional: true })
    const { covers, digest } = pageOf(log).signatures[0]!.data
    sign(log, 520, { covers, digest, provisional: false })
    expect(standingSignature(pageOf(log).signatures)).toMatchObject({ signature: { id: first }, isProvisional: false })
    expect(standingSignature([])).toBeUndefined()
  })

  it('under a signer’s own exception waits for another supervisor, not for the same one', () => {
    const log = goodShift()
    const own = log.reading('neg-1-fix-ph', 4.92, at(250), {}, { person: 'helena' })
    log.reading('neg-1-fix-ph', 4.5, at(252))
    const signed = sign(log, 500, { openItems: [{ code: 'ownException', ref: own }] })
    expect(pageOf(log).signatures[0]).toMatchObject({ own: [own], ownNotCountersigned: [own] })
    const counter = (person: string, minutes: number): EntryId =>
      log.say({ kind: 'countersign', data: { ref: signed, late: [own], provisional: false }, at: at(minutes), person, dev: phone('s') })
    counter('helena', 600)
    expect(pageOf(log).signatures[0]!.ownNotCountersigned).toEqual([own])
    counter('rosa', 610)
    expect(pageOf(log).signatures[0]!.ownNotCountersigned).toEqual([])
  })

  it('covers what was there, and names what came late until it is countersigned', () => {
    const log = goodShift()
    const signed = sign(log, 500)
    expect(pageOf(log).signatures).toMatchObject([{ id: signed, late: [], notCountersigned: [] }])
    const late = log.reading('neg-1-fix-ph', 4.6, at(300), {}, { dev: phone('b') })
    expect(pageOf(log).signatures).toMatchObject([{ late: [late], notCountersigned: [late] }])
    log.say({ kind: 'countersign', data: { ref: signed, late: [late], provisional: false }, at: at(600), person: 'helena', dev: phone('s') })
    expect(pageOf(log).signatures).toMatchObject([{ late: [late], notCountersigned: [], countersigns: [{ data: { ref: signed } }] }])
  })

  it('an amendment afterwards is a late entry too; the digest of what was signed stays', () => {
    const log = goodShift()
    sign(log, 500)
    const before = pageOf(log).signatures[0]!.digestText
    const reading = log.lab().ledger.lines.find((line) => line.kind === 'reading')!
    const amend = log.say({ kind: 'amend', data: { ref: reading.id, data: log.readingData('neg-1-fix-ph', 4.6), why: 'misread' }, at: at(700) })
    const [signature] = pageOf(log).signatures
    expect(signature!.late).toEqual([amend])
    expect(signature!.digestText).toBe(before)
    expect(sha256(signature!.digestText)).toBe(signature!.data.digest)
  })

  it('a reason given after the shift for a gap in it is of that shift; the next shift’s readings are not', () => {
    const log = goodShift()
    sign(log, 500)
    log.reading('neg-1-fix-ph', 4.5, at(510))
    expect(pageOf(log).signatures[0]!.late).toEqual([])
    const skip = log.say({ kind: 'skip', data: { check: 'neg-1-fix-ph' as never, due: at(470), reason: 'otherWork' }, at: at(520) })
    expect(pageOf(log).signatures[0]!.late).toEqual([skip])
  })

  it('has a digest that does not depend on the order in which entries came, and changes with every entry', () => {
    const entry = fc.record({ dev: fc.constantFrom(phone('a'), phone('b')), seq: fc.integer({ min: 1, max: 99 }), number: fc.nat() })
    fc.assert(
      fc.property(fc.uniqueArray(entry, { selector: ({ dev, seq }) => `${dev} ${seq}`, minLength: 1, maxLength: 12 }), fc.nat(), (entries, pick) => {
        const covered = entries.map(({ dev, seq, number }) => ({ dev, seq, id: idOf(number), h: sha256(String(number)) }))
        expect(digestText(covered.toReversed())).toBe(digestText(covered))
        const changed = covered.map((it, index) => (index === pick % covered.length ? { ...it, h: sha256('other') } : it))
        expect(digestText(changed)).not.toBe(digestText(covered))
        expect(signedLines(covered).map(({ id, h }) => `${id} ${h}`)).toEqual(digestText(covered).split('\n').slice(1, -1))
      }),
    )
  })
})
