import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { demoLab } from '../../src/demo/lab.ts'
import { doneCount, resumeRound, type Round } from '../../src/rounds/kept-round.ts'
import { answer, currentStep, fittedTo, goBack, goOn, goTo, isFinished, key, openSteps, scan, settle, startRound, takeBack } from '../../src/rounds/round.ts'
import { startTimer } from '../../src/rounds/timer.ts'
import { walkAt } from '../../src/rounds/walk.ts'
import { idOf, LabLog, minute, smallPlan } from '../projections/log.ts'

const plan = smallPlan(demoLab(), 'neg-1-dev-temp', 'neg-1-dev-level', 'neg-1-fix-ph', 'neg-1-fix-level', 'neg-1-wash-flow')
const start = Date.parse('2026-01-12T06:00:00Z')
const at = (minutes: number): number => start + minutes * minute

const fresh = (): Round => {
  const log = new LabLog(plan, start)
  log.run('neg-1', 'running', at(0), 30.48)
  return startRound(walkAt(log.lab().state, plan, plan.machines[0]!, at(1))!, 'r1', at(1))
}
const here = (round: Round): string => currentStep(round).check

const settling = startTimer(90, { wall: 1_000, mono: 10, session: 'one' })

describe('a round under way', () => {
  it('goes from check to check, and is finished when each has its answer', () => {
    let round = fresh()
    expect(round.steps.map(({ check }) => check)).toEqual(['neg-1-dev-temp', 'neg-1-dev-level', 'neg-1-fix-ph', 'neg-1-fix-level', 'neg-1-wash-flow'])
    for (const index of [0, 1, 2, 3, 4]) {
      expect(isFinished(round)).toBe(false)
      round = answer(round, index === 3 ? 'skipped' : 'done', idOf(index + 1), at(2 + index))
    }
    expect(isFinished(round)).toBe(true)
    expect(doneCount(round)).toBe(5)
    expect(round.steps[3]?.outcome).toEqual({ kind: 'skipped', entry: idOf(4) })
  })

  it('passed over, a check stays open and is offered again at the end', () => {
    let round = goOn(fresh(), at(2))
    expect(here(round)).toBe('neg-1-dev-level')
    for (const index of [1, 2, 3, 4]) round = answer(round, 'done', idOf(index), at(3))
    expect(here(round)).toBe('neg-1-dev-temp')
    expect(openSteps(round).map(({ check }) => check)).toEqual(['neg-1-dev-temp'])
  })

  it('goes back to a check already answered without losing its answer', () => {
    const round = goBack(answer(fresh(), 'done', idOf(1), at(2)), at(3))
    expect(here(round)).toBe('neg-1-dev-temp')
    expect(currentStep(round).outcome).toEqual({ kind: 'done', entry: idOf(1) })
    expect(here(goOn(round, at(4)))).toBe('neg-1-dev-level')
  })

  it('an answer taken back opens its check again', () => {
    const round = takeBack(answer(fresh(), 'done', idOf(1), at(2)), idOf(1), at(3))
    expect(here(round)).toBe('neg-1-dev-temp')
    expect(currentStep(round).outcome).toBeUndefined()
  })

  it('drops what was half keyed when one goes elsewhere', () => {
    const round = goTo(settle(key(fresh(), '21.'), settling), 2, at(3))
    expect(round).toMatchObject({ keyed: '', at: 2 })
    expect(round.settling).toBeUndefined()
  })

  it('counts several checks at one tank as one visit: the label is scanned once and the time runs on', () => {
    const scanned = scan(fresh())
    const sameTank = answer(scanned, 'done', idOf(1), at(3))
    expect(sameTank).toMatchObject({ atTank: true, stationSince: at(1) })
    const nextTank = answer(sameTank, 'done', idOf(2), at(4))
    expect(nextTank).toMatchObject({ atTank: false, stationSince: at(4) })
  })
})

describe('a round that was kept', () => {
  it('goes on exactly where it was, half-keyed figures and settling time included', () => {
    const round = settle(key(answer(fresh(), 'done', idOf(1), at(2)), '-1'), settling)
    expect(resumeRound(JSON.parse(JSON.stringify(round)))).toEqual(round)
  })

  it.each([
    ['nothing', undefined],
    ['a text', 'round'],
    ['a round of a later version', { ...fresh(), v: 2 }],
    ['a round without steps', { ...fresh(), steps: [] }],
    ['a round whose place is beyond its steps', { ...fresh(), at: 9 }],
    ['a step with an answer that names no entry', { ...fresh(), steps: [{ check: 'neg-1-dev-temp', due: 1, outcome: { kind: 'done', entry: 'x' } }] }],
  ])('%s is no round, and is forgotten: the log holds all that counts', (_, kept) => expect(resumeRound(kept)).toBeUndefined())

  it('leaves out the checks that a revision of the plan took away meanwhile', () => {
    const round = goOn(key(answer(fresh(), 'done', idOf(1), at(2)), '5'), at(3))
    expect(here(round)).toBe('neg-1-fix-ph')
    const without = (...gone: string[]) => ({ ...plan, checks: plan.checks.filter(({ id }) => !gone.includes(id)) })
    expect(fittedTo(round, plan, at(4))).toBe(round)
    expect(fittedTo(round, without('neg-1-dev-level'), at(4))).toMatchObject({ at: 1, steps: [{}, { check: 'neg-1-fix-ph' }, {}, {}] })
    expect(here(fittedTo(round, without('neg-1-fix-ph'), at(4))!)).toBe('neg-1-fix-level')
    // What was answered stays in the round, even where its check is gone.
    expect(fittedTo(round, without('neg-1-dev-temp'), at(4))?.steps).toHaveLength(5)
    expect(fittedTo(fresh(), { ...plan, checks: [] }, at(4))).toBeUndefined()
  })

  it('whatever is tapped, it stays a round that can be kept and read again, and never loses an answer', () => {
    const tap = fc.record({ what: fc.constantFrom('done', 'skipped', 'on', 'back', 'to', 'key', 'settle', 'scan', 'takeBack'), pick: fc.nat(9) })
    fc.assert(
      fc.property(fc.array(tap, { maxLength: 40 }), (taps) => {
        let round = fresh()
        let entries = 0
        const answered = new Map<string, number>()
        taps.forEach(({ what, pick }, index) => {
          const now = at(2 + index)
          if (what === 'done' || what === 'skipped') {
            answered.set(here(round), ++entries)
            round = answer(round, what, idOf(entries), now)
          } else if (what === 'on') round = goOn(round, now)
          else if (what === 'back') round = goBack(round, now)
          else if (what === 'to') round = goTo(round, pick - 2, now)
          else if (what === 'key') round = key(round, `${pick}.`)
          else if (what === 'settle') round = settle(round, startTimer(90, { wall: now, mono: now, session: 'one' }))
          else if (what === 'scan') round = scan(round)
          else {
            const [last] = [...answered].slice(-1)
            if (last) answered.delete(last[0])
            round = takeBack(round, idOf(last?.[1] ?? 0), now)
          }
        })
        expect(resumeRound(JSON.parse(JSON.stringify(round)))).toEqual(round)
        const kept = new Map(round.steps.flatMap(({ check, outcome }) => (outcome ? [[check as string, outcome.entry]] : [])))
        expect(kept).toEqual(new Map([...answered].map(([check, number]) => [check, idOf(number)])))
      }),
      { numRuns: 200 },
    )
  })
})
