import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { demoLab } from '../../src/demo/lab.ts'
import { Lab } from '../../src/projections/lab.ts'
import type { Arrived } from '../../src/projections/line.ts'
import type { CheckId } from '../../src/plan/ids.ts'
import type { EntryId } from '../../src/record/ids.ts'
import { hour, LabLog, minute, phone, smallPlan } from './log.ts'

const plan = smallPlan(demoLab(), 'neg-1-fix-ph', 'pos-2-fix-ph', 'neg-1-tension', 'neg-1-strip', 'neg-1-dev-temp')
const start = Date.parse('2026-01-12T06:00:00Z')
const phones = ['a', 'b', 'c'].map(phone)

/** A shift in which three phones say all kinds of things, changes of what others said among them; times come close and even coincide. */
const shift = fc
  .array(
    fc.record({
      what: fc.constantFrom('reading', 'reading', 'reading', 'look', 'skip', 'run', 'add', 'hold', 'release', 'close', 'note', 'amend', 'amendTime', 'withdraw', 'strip', 'plan'),
      at: fc.integer({ min: 0, max: 480 }),
      dev: fc.nat(2),
      pick: fc.nat(),
      value: fc.integer({ min: 380, max: 530 }),
      before: fc.integer({ min: -30, max: 90 }),
    }),
    { minLength: 4, maxLength: 60 },
  )
  .map((steps) => {
    const log = new LabLog(plan, start)
    const said: { id: EntryId; kind: string }[] = []
    const readings: EntryId[] = []
    for (const { what, at, dev, pick, value, before } of steps) {
      const time = start + at * minute
      const by = { dev: phones[dev]! }
      const any = said[pick % Math.max(1, said.length)]
      const reading = readings[pick % Math.max(1, readings.length)]
      const note = (id: EntryId): void => void said.push({ id, kind: what })
      if (what === 'reading') {
        const notedAt = before > 0 ? { notedAt: new Date(time - before * minute).toISOString() } : {}
        const id = log.reading(pick % 2 ? 'neg-1-fix-ph' : 'pos-2-fix-ph', value / 100, time, notedAt, by)
        readings.push(id)
        note(id)
      } else if (what === 'look') note(log.look('neg-1-tension', value > 420, time))
      else if (what === 'strip') note(log.strip('neg-1-strip', value > 420 ? 'IN' : 'ACT', time))
      else if (what === 'skip')
        note(log.say({ kind: 'skip', data: { check: 'neg-1-fix-ph' as CheckId, due: time - before * minute, reason: 'otherWork' }, at: time, ...by }))
      else if (what === 'run') note(log.run('neg-1', (['startUp', 'running', 'standby', 'stopped'] as const)[pick % 4]!, time, 30.48))
      else if (what === 'add') note(log.acid(reading, time, {}, by))
      else if (what === 'hold') note(log.say({ kind: 'hold', data: { machine: 'neg-1' as never, reason: 'out', ...(reading ? { exception: reading } : {}) }, at: time, ...by }))
      else if (what === 'plan') note(log.say({ kind: 'plan', data: { plan: { ...plan, name: `Revision ${pick}` }, effectiveFrom: time + before * minute }, at: time, ...by }))
      else if (!any) continue
      else if (what === 'release') note(log.say({ kind: 'release', data: { hold: any.id, reason: 'in limits' }, at: time, ...by }))
      else if (what === 'close' && reading) note(log.say({ kind: 'close', data: { exception: reading, reason: 'sampleFault' }, at: time, ...by }))
      else if (what === 'note') note(log.say({ kind: 'note', data: { text: 'seen', about: 'general', ...(reading ? { exception: reading } : {}) }, at: time, ...by }))
      else if (what === 'withdraw') note(log.say({ kind: 'withdraw', data: { ref: any.id, why: 'wrong tank' }, at: time, ...by }))
      else if ((what === 'amend' || what === 'amendTime') && reading) {
        const notedAt = what === 'amendTime' ? { notedAt: new Date(time - Math.abs(before) * minute).toISOString() } : {}
        note(log.say({ kind: 'amend', data: { ref: reading, data: log.readingData('neg-1-fix-ph', value / 100 + 0.1, notedAt), why: 'misread' }, at: time, ...by }))
      }
    }
    return log.arrived
  })

const inBatches = (entries: readonly Arrived[], sizes: readonly number[]): Lab => {
  const lab = new Lab()
  let next = 0
  for (let batch = 0; next < entries.length; batch++) {
    const size = sizes[batch % sizes.length]!
    lab.add(entries.slice(next, next + size))
    next += size
  }
  return lab
}

const shown = (lab: Lab): unknown => JSON.parse(JSON.stringify({ state: lab.state, lines: lab.ledger.lines }))

describe('the order of arrival', { timeout: 60_000 }, () => {
  it('does not change a projection, whatever the batches', () => {
    fc.assert(
      fc.property(shift, fc.infiniteStream(fc.integer({ min: 1, max: 12 })), fc.infiniteStream(fc.nat()), (entries, sizes, chance) => {
        const shuffled = entries.map((entry) => ({ entry, by: chance.next().value })).sort((a, b) => a.by - b.by).map(({ entry }) => entry)
        const steps = Array.from({ length: 8 }, () => sizes.next().value)
        expect(shown(inBatches(shuffled, steps))).toEqual(shown(inBatches(entries, [entries.length])))
      }),
      { numRuns: 400 },
    )
  })

  it('nor does it matter that an entry comes twice, or comes back with the server’s receipt', () => {
    fc.assert(
      fc.property(shift, (entries) => {
        const lab = inBatches(entries, [7])
        const before = shown(lab)
        lab.add(entries)
        expect(shown(lab)).toEqual(before)
        lab.add(entries.map((item) => ({ ...item, recvAt: Date.parse(item.entry.at) + 5000, gseq: item.entry.seq, status: 'valid' as const })))
        expect(JSON.parse(JSON.stringify(lab.state))).toEqual((before as { state: unknown }).state)
      }),
      { numRuns: 100 },
    )
  })

  it('what the server sets aside is as if it had never come, whether it counted here before or arrives with that word', () => {
    fc.assert(
      fc.property(shift, fc.infiniteStream(fc.boolean()), fc.boolean(), (entries, chance, atOnce) => {
        const aside = new Set(entries.slice(1).filter(() => chance.next().value).map(({ entry }) => entry.id))
        const word = entries.filter(({ entry }) => aside.has(entry.id)).map((item) => ({ ...item, status: 'quarantined' as const }))
        const lab = new Lab()
        if (atOnce) lab.add([...entries, ...word])
        else {
          lab.add(entries)
          for (const item of word) lab.add([item])
        }
        expect(shown(lab)).toEqual(shown(inBatches(entries.filter(({ entry }) => !aside.has(entry.id)), [50])))
      }),
      { numRuns: 200 },
    )
  })

  it('a state is plain data: it goes through JSON unchanged', () => {
    fc.assert(
      fc.property(shift, (entries) => {
        const { state } = inBatches(entries, [entries.length])
        expect(JSON.parse(JSON.stringify(state))).toEqual(state)
      }),
      { numRuns: 100 },
    )
  })

  it('a lab restored from a snapshot goes on as if it had never been away, or says that it must be folded anew', () => {
    fc.assert(
      fc.property(shift, fc.nat(480), fc.nat(100), (entries, cut, known) => {
        const first = entries.slice(0, Math.ceil((entries.length * known) / 100))
        const kept = inBatches(first, [20]).snapshot(start + cut * minute)
        if (!kept) return
        const lab = Lab.restore(JSON.parse(JSON.stringify(kept)) as typeof kept)
        const { older, unknown } = lab.add(entries)
        const named = unknown.filter((ref) => entries.some(({ entry }) => entry.id === ref))
        if (older.length || named.length) return
        const whole = inBatches(entries, [entries.length])
        expect(JSON.parse(JSON.stringify(lab.state))).toEqual(JSON.parse(JSON.stringify(whole.state)))
        expect(lab.linesBefore + lab.ledger.lines.length).toBe(whole.ledger.lines.length)
      }),
      { numRuns: 400 },
    )
  })

  it('the state at an earlier instant is the fold of the lines before it', () => {
    fc.assert(
      fc.property(shift, fc.nat(480), (entries, at) => {
        const time = start + at * minute + 1
        const lab = inBatches(entries, [5])
        const lines = lab.ledger.lines.filter((line) => line.time < time && !line.withdrawnBy)
        const changedLater = lab.ledger.lines.some((line) => line.time >= time && (line.kind === 'amend' || line.kind === 'withdraw' || line.kind === 'plan'))
        if (changedLater) return
        const early = new Lab()
        early.add(entries.filter(({ entry }) => lab.ledger.line(entry.id)!.time < time))
        expect(early.ledger.lines.filter((line) => !line.withdrawnBy)).toHaveLength(lines.length)
        expect(lab.stateAt(time)).toEqual(early.state)
      }),
      { numRuns: 100 },
    )
  })
})

describe('long logs', { timeout: 60_000 }, () => {
  it('keep few checkpoints, and a late entry still lands in its place', () => {
    const log = new LabLog(plan, start)
    log.run('neg-1', 'running', start, 30.48)
    for (let index = 0; index < 5000; index++) log.reading('neg-1-dev-temp', 21 + (index % 7) / 10 - 0.3, start + hour + index * 30_000)
    const late = log.arrived.splice(2500, 1)
    const lab = new Lab()
    for (const entry of log.arrived) lab.add([entry])
    expect(lab.checkpointCount).toBeLessThan(30)
    lab.add(late)
    const whole = new Lab()
    whole.add([...log.arrived, ...late])
    expect(shown(lab)).toEqual(shown(whole))
  })
})
