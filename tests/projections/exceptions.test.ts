import { describe, expect, it } from 'vitest'
import { demoLab } from '../../src/demo/lab.ts'
import { openExceptions, phaseAt, type Exception } from '../../src/projections/exceptions.ts'
import { idOf, LabLog, minute, phone, smallPlan } from './log.ts'
import type { EntryId } from '../../src/record/ids.ts'

const plan = smallPlan(demoLab(), 'neg-1-fix-ph', 'neg-1-dev-temp', 'neg-1-scratches', 'neg-1-strip', 'neg-1-can')
const start = Date.parse('2026-01-12T06:00:00Z')
const at = (minutes: number): number => start + minutes * minute

const fresh = (): LabLog => {
  const log = new LabLog(plan, start)
  log.run('neg-1', 'running', at(1), 30.48)
  return log
}
const ph = (log: LabLog, value: number, minutes: number, more = {}): EntryId => log.reading('neg-1-fix-ph', value, at(minutes), more)
const exceptionOf = (log: LabLog, id: EntryId): Exception => {
  const found = log.lab().state.exceptions.all[id]
  if (!found) throw new Error('no exception')
  return found
}
const noneOpen = (log: LabLog): void => expect(openExceptions(log.lab().state.exceptions)).toEqual([])

describe('a reading out of its action limits', () => {
  it('asks for a repeat first: one bad reading alone opens nothing', () => {
    const log = fresh()
    const first = ph(log, 4.92, 10)
    const exception = exceptionOf(log, first)
    expect(exception.state).toBe('toConfirm')
    expect(phaseAt(exception, at(11))).toBe('toConfirm')
  })

  it('is open when the repeat agrees, and waits to be corrected', () => {
    const log = fresh()
    const first = ph(log, 4.92, 10)
    ph(log, 4.91, 12, { repeatOf: first })
    const exception = exceptionOf(log, first)
    expect(exception).toMatchObject({ state: 'open', check: 'neg-1-fix-ph', station: 'neg-1-fix', machine: 'neg-1', openedAt: at(10), openedBy: 'marta' })
    expect(phaseAt(exception, at(13))).toBe('toCorrect')
    expect(exception.marks.map(({ value }) => value)).toEqual([4.92, 4.91])
  })

  it('is closed as not confirmed when the repeat refutes it, and the next one that is out asks for a repeat anew', () => {
    const log = fresh()
    const first = ph(log, 4.92, 10)
    const repeat = ph(log, 4.52, 12, { repeatOf: first })
    expect(exceptionOf(log, first)).toMatchObject({ state: 'closed', closedHow: 'notConfirmed', closedAt: at(12), closedWith: repeat })
    noneOpen(log)
    const again = ph(log, 4.95, 30)
    expect(exceptionOf(log, again).state).toBe('toConfirm')
  })

  it('a repeat between warning and action limit refutes it too: it is not beyond action', () => {
    const log = fresh()
    const first = ph(log, 4.92, 10)
    ph(log, 4.75, 12, { repeatOf: first })
    expect(exceptionOf(log, first).closedHow).toBe('notConfirmed')
  })

  it('remembers the last good reading before it, from which film is at risk', () => {
    const log = fresh()
    const good = ph(log, 4.6, 5)
    const first = ph(log, 4.92, 10)
    expect(exceptionOf(log, first).lastGood).toEqual({ id: good, time: at(5) })
  })
})

describe('a look that is not right, and a check that holds at once', () => {
  it('is open from the first: nobody waits for a second scratch', () => {
    const log = fresh()
    const first = log.look('neg-1-scratches', false, at(10))
    expect(exceptionOf(log, first).state).toBe('open')
    log.look('neg-1-scratches', true, at(30))
    expect(exceptionOf(log, first)).toMatchObject({ state: 'closed', closedHow: 'backInLimits' })
  })

  it('a reading whose check holds at once is open from the first', () => {
    const strict = { ...plan, checks: plan.checks.map((check) => (check.id === 'neg-1-fix-ph' ? { ...check, immediateHold: true } : check)) }
    const log = new LabLog(strict, start)
    const first = ph(log, 4.92, 10)
    expect(exceptionOf(log, first).state).toBe('open')
  })
})

// Two control strips in a row seldom mislead together: US Navy, Photography (Advanced), chapter 2, as quoted in the trade reference.
describe('a control strip', () => {
  it('stops nothing until a second strip agrees', () => {
    const log = fresh()
    const first = log.strip('neg-1-strip', 'ACT', at(10))
    expect(exceptionOf(log, first).state).toBe('toConfirm')
    log.strip('neg-1-strip', 'ACT', at(40))
    expect(exceptionOf(log, first).state).toBe('open')
  })
})

describe('a dose', () => {
  const opened = (): { log: LabLog; first: EntryId } => {
    const log = fresh()
    const first = ph(log, 4.92, 10)
    ph(log, 4.91, 12, { repeatOf: first })
    return { log, first }
  }

  it('mixes for its time, then asks for the re-check, and the re-check in limits closes', () => {
    const { log, first } = opened()
    log.acid(first, at(20))
    expect(phaseAt(exceptionOf(log, first), at(31))).toBe('mixing')
    expect(phaseAt(exceptionOf(log, first), at(32))).toBe('toRecheck')
    const recheck = ph(log, 4.52, 33, { recheckOf: first })
    expect(exceptionOf(log, first)).toMatchObject({ state: 'closed', closedHow: 'backInLimits', closedAt: at(33), closedBy: 'marta', closedWith: recheck })
    expect(phaseAt(exceptionOf(log, first), at(34))).toBe('closed')
  })

  it('a reading taken while it mixes says nothing: it neither closes nor asks for the next portion', () => {
    const { log, first } = opened()
    log.acid(first, at(20))
    ph(log, 4.5, 25)
    expect(exceptionOf(log, first).state).toBe('open')
    expect(phaseAt(exceptionOf(log, first), at(26))).toBe('mixing')
    expect(phaseAt(exceptionOf(log, first), at(40))).toBe('toRecheck')
  })

  it('a re-check between warning and action limit asks for the next portion', () => {
    const { log, first } = opened()
    log.acid(first, at(20))
    ph(log, 4.74, 33, { recheckOf: first })
    expect(phaseAt(exceptionOf(log, first), at(34))).toBe('toCorrect')
    log.acid(first, at(36), { portion: 2 })
    expect(phaseAt(exceptionOf(log, first), at(40))).toBe('mixing')
    expect(exceptionOf(log, first).doses.map(({ portion }) => portion)).toEqual([1, 2])
  })

  it('of two that mix, the later end counts', () => {
    const { log, first } = opened()
    log.acid(first, at(20), { mixSeconds: 3000 })
    log.acid(first, at(25), { portion: 2, mixSeconds: 60 })
    expect(phaseAt(exceptionOf(log, first), at(30))).toBe('mixing')
    ph(log, 4.5, 30)
    expect(exceptionOf(log, first).state).toBe('open')
  })

  it('poured before the repeat makes it open: what is read next is a re-check, not a repeat', () => {
    const log = fresh()
    const first = ph(log, 4.92, 10)
    log.acid(first, at(12))
    ph(log, 4.5, 14)
    expect(exceptionOf(log, first).state).toBe('open')
    expect(phaseAt(exceptionOf(log, first), at(15))).toBe('mixing')
  })

  it('that arrives after another phone closed the exception opens it again: what was poured must be read again', () => {
    const { log, first } = opened()
    ph(log, 4.6, 15)
    expect(exceptionOf(log, first).state).toBe('closed')
    log.acid(first, at(18), {}, { dev: phone('b') })
    expect(exceptionOf(log, first).state).toBe('open')
    expect(phaseAt(exceptionOf(log, first), at(40))).toBe('toRecheck')
    ph(log, 4.5, 41)
    expect(exceptionOf(log, first).closedHow).toBe('backInLimits')
  })

  it('withdrawn, it was never poured', () => {
    const { log, first } = opened()
    const dose = log.acid(first, at(20))
    log.say({ kind: 'withdraw', data: { ref: dose, why: 'wrong tank keyed' }, at: at(21) })
    expect(phaseAt(exceptionOf(log, first), at(22))).toBe('toCorrect')
  })

  it('keyed later, it mixes from the time at which it was poured', () => {
    const { log, first } = opened()
    log.acid(first, at(30), { notedAt: new Date(at(20)).toISOString() })
    expect(phaseAt(exceptionOf(log, first), at(32.5))).toBe('toRecheck')
  })
})

describe('a reading between warning and action limit', () => {
  it('opens nothing by itself', () => {
    const log = fresh()
    ph(log, 4.75, 10)
    noneOpen(log)
  })

  it('becomes an exception when it is answered, even after the next reading was taken', () => {
    const log = fresh()
    const warned = ph(log, 4.75, 10)
    const next = ph(log, 4.76, 14)
    log.acid(warned, at(20))
    const exception = exceptionOf(log, warned)
    expect(exception.state).toBe('open')
    expect(exception.marks.map(({ id }) => id)).toEqual([warned, next])
    expect(phaseAt(exception, at(40))).toBe('toRecheck')
  })
})

describe('closing by hand', () => {
  it('ends an exception with its reason', () => {
    const log = fresh()
    const first = ph(log, 4.92, 10)
    ph(log, 4.93, 12)
    const close = log.say({ kind: 'close', data: { exception: first, reason: 'bathReplaced' }, at: at(60), person: 'helena' })
    expect(exceptionOf(log, first)).toMatchObject({ state: 'closed', closedHow: 'byHand', closeReason: 'bathReplaced', closedBy: 'helena', closedWith: close })
  })

  it('handing over closes nothing: the next shift finds it open', () => {
    const log = fresh()
    const first = ph(log, 4.92, 10)
    ph(log, 4.93, 12)
    const given = log.say({ kind: 'handover', data: { shift: 'early' as never, date: '2026-01-12', notes: 'acid next', open: [first], side: 'given' }, at: at(470) })
    expect(exceptionOf(log, first)).toMatchObject({ state: 'open', handedOver: given })
  })
})

describe('an amended or withdrawn reading', () => {
  it('amended to what it really was, never opened an exception', () => {
    const log = fresh()
    const first = ph(log, 4.92, 10)
    log.say({ kind: 'amend', data: { ref: first, data: log.readingData('neg-1-fix-ph', 4.52), why: 'misread' }, at: at(11) })
    expect(log.lab().state.exceptions.all).toEqual({})
    expect(log.lab().ledger.original(first)?.data).toMatchObject({ value: 4.92 })
    expect(log.lab().ledger.line(first)).toMatchObject({ data: { value: 4.52 } })
  })

  it('but a dose that was poured on it must still be read again', () => {
    const log = fresh()
    const first = ph(log, 4.92, 10)
    log.acid(first, at(12))
    log.say({ kind: 'amend', data: { ref: first, data: log.readingData('neg-1-fix-ph', 4.52), why: 'misread' }, at: at(20) })
    expect(phaseAt(exceptionOf(log, first), at(40))).toBe('toRecheck')
  })

  it('an amendment that is withdrawn no longer counts', () => {
    const log = fresh()
    const first = ph(log, 4.92, 10)
    const amended = log.say({ kind: 'amend', data: { ref: first, data: log.readingData('neg-1-fix-ph', 4.52), why: 'misread' }, at: at(11) })
    log.say({ kind: 'withdraw', data: { ref: amended, why: 'it was right after all' }, at: at(12) })
    expect(exceptionOf(log, first).state).toBe('toConfirm')
    expect(log.lab().ledger.line(first)).toMatchObject({ data: { value: 4.92 }, amendedBy: [] })
  })

  it('a withdrawal that is withdrawn gives the reading back', () => {
    const log = fresh()
    const first = ph(log, 4.92, 10)
    const gone = log.say({ kind: 'withdraw', data: { ref: first, why: 'wrong tank' }, at: at(11) })
    expect(log.lab().state.exceptions.all).toEqual({})
    log.say({ kind: 'withdraw', data: { ref: gone, why: 'right tank' }, at: at(12) })
    expect(exceptionOf(log, first).state).toBe('toConfirm')
  })

  it('an amendment of an entry that has not arrived waits for it', () => {
    const log = fresh()
    const amended = log.say({ kind: 'amend', data: { ref: idOf(4), data: log.readingData('neg-1-fix-ph', 4.52), why: 'misread' }, at: at(11) })
    const first = ph(log, 4.92, 10)
    expect(first).toBe(idOf(4))
    const lab = log.lab()
    expect(lab.ledger.line(first)).toMatchObject({ data: { value: 4.52 }, amendedBy: [amended] })
    expect(lab.state.checks['neg-1-fix-ph' as never]).toMatchObject({ recent: [{ value: 4.52, verdict: 'IN' }] })
  })

  it('data that does not fit the kind changes nothing', () => {
    const log = fresh()
    const first = ph(log, 4.92, 10)
    log.say({ kind: 'amend', data: { ref: first, data: { value: 'four' }, why: 'misread' }, at: at(11) })
    expect(log.lab().ledger.line(first)).toMatchObject({ data: { value: 4.92 }, amendedBy: [] })
  })

  it('a signature stands: neither amended nor withdrawn', () => {
    const log = fresh()
    const signed = log.say({
      kind: 'signOff',
      data: { shift: 'early' as never, date: '2026-01-12', from: start, to: at(480), covers: {}, digest: '0'.repeat(64) as never, openItems: [], meaning: 'reviewedAndReleased', provisional: false },
      at: at(490), person: 'helena',
    })
    log.say({ kind: 'withdraw', data: { ref: signed, why: 'second thoughts' }, at: at(500) })
    expect(log.lab().ledger.line(signed)?.withdrawnBy).toBeUndefined()
  })
})

describe('entries that the server set aside', () => {
  it('of a device that was shut out do not count, even if they counted here before', () => {
    const log = fresh()
    const first = ph(log, 4.92, 10)
    const lab = log.lab()
    expect(lab.state.exceptions.all[first]).toBeDefined()
    const own = log.arrived.find(({ entry }) => entry.id === first)!
    lab.add([{ ...own, status: 'quarantined', recvAt: at(20) }])
    expect(lab.state.exceptions.all[first]).toBeUndefined()
    expect(lab.ledger.line(first)).toBeUndefined()
  })

  it('an entry from a clock far ahead stands where the server received it', () => {
    const log = fresh()
    const ahead = ph(log, 4.6, 60 * 24 * 365)
    const lab = log.lab()
    lab.add([{ ...log.arrived.at(-1)!, recvAt: at(30) }])
    expect(lab.ledger.line(ahead)?.time).toBe(at(30))
    expect(lab.state.checks['neg-1-fix-ph' as never]).toMatchObject({ recent: [{ time: at(30) }] })
  })
})

describe('a plan that comes late', () => {
  it('makes the readings count that named it before it was here', () => {
    const log = fresh()
    ph(log, 4.92, 10)
    const [planEntry, ...others] = log.arrived
    const lab = new LabLog(plan, start).lab()
    expect(lab.state.plans.revisions).toHaveLength(1)
    const later = log.lab()
    const emptyFirst = new (later.constructor as new () => typeof later)()
    emptyFirst.add(others)
    expect(emptyFirst.state.checks).toEqual({})
    emptyFirst.add([planEntry!])
    expect(emptyFirst.state).toEqual(later.state)
  })

  it('a reading keyed on a slow clock before the plan that it names still counts', () => {
    const log = new LabLog(plan, at(10), start)
    ph(log, 4.6, 5)
    expect(log.lab().state.checks['neg-1-fix-ph' as never]).toMatchObject({ recent: [{ value: 4.6 }] })
  })

  it('a reading of a check that the plan does not have is kept and counted nowhere', () => {
    const log = fresh()
    log.say({ kind: 'reading', data: { ...log.readingData('neg-1-fix-ph', 4.6), check: 'gone' as never }, at: at(10) })
    expect(log.lab().state.checks['gone' as never]).toBeUndefined()
    expect(log.lab().ledger.lines.at(-1)).toMatchObject({ data: { check: 'gone' } })
  })
})
