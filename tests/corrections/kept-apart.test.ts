import * as fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { addOf } from '../../src/corrections/add-entry.ts'
import { beginSheet, nextStep, tick } from '../../src/corrections/mixing-sheet.ts'
import { ownDose } from '../../src/corrections/own-dose.ts'
import type { Remedy } from '../../src/corrections/remedy.ts'
import type { MaterialId, PersonId } from '../../src/plan/ids.ts'
import type { EntryId } from '../../src/record/ids.ts'
import { cardById } from '../../src/safety/cards.ts'
import { Bench } from './kit.ts'

/** Every number that can be reached from a value: through own and inherited properties, arrays, maps, JSON and text. */
const numbersIn = (value: unknown, seen = new Set<unknown>()): number[] => {
  if (typeof value === 'number') return [value]
  if (typeof value === 'string') return (value.match(/\d+(\.\d+)?/g) ?? []).map(Number)
  if (value === null || typeof value !== 'object' || seen.has(value)) return []
  seen.add(value)
  const names = [...Object.getOwnPropertyNames(value), ...Object.getOwnPropertySymbols(value)]
  return names.flatMap((name) => numbersIn((value as Record<string | symbol, unknown>)[name], seen))
}

const gives = (shown: unknown, amount: number): boolean =>
  [...numbersIn(shown), ...numbersIn(JSON.stringify(shown))].some((it) => [1, 0.001, 0.5, 2].some((scale) => Math.abs(it * scale - amount) < 1e-6 * amount))

/**
 * Readings are odd figures, so that no amount is by chance the same number as a waiting time.
 * A world with a fixing bath and a developer that are both out, and everything a thumb could do in it.
 */
const world = () => {
  const bench = new Bench().safe()
  bench.read('neg-1-dev-temp', 21)
  const exceptions = [bench.confirmed('neg-1-fix-ph', 4.92), bench.confirmed('neg-1-dev-metol', 1.213), bench.confirmed('neg-1-dev-ph', 8.7)]
  return { bench, exceptions }
}

const steps = fc.array(
  fc.oneof(
    fc.record({ do: fc.constant('look' as const), at: fc.nat(2) }),
    fc.record({ do: fc.constant('reveal' as const), at: fc.nat(2), remedy: fc.nat(15), as: fc.nat(2) }),
    fc.record({ do: fc.constant('pour' as const), at: fc.nat(2), remedy: fc.nat(15), as: fc.nat(2), amount: fc.integer({ min: 1, max: 5000 }) }),
    fc.record({
      do: fc.constant('caution' as const), at: fc.nat(2), remedy: fc.nat(15), as: fc.nat(2),
      flaw: fc.constantFrom('none', 'wrongVersion', 'fewerLines', 'otherException', 'otherMaterial', 'noException', 'oneCardOnly'),
    }),
    fc.record({ do: fc.constant('wait' as const), minutes: fc.constantFrom(0, 1, 30, 61) }),
    fc.record({ do: fc.constant('read' as const), at: fc.nat(2), value: fc.nat(3) }),
  ),
  { minLength: 1, maxLength: 14 },
)

describe('the amount of a hazardous material', () => {
  it('cannot be revealed or logged by any sequence of steps without its own caution, confirmed by the one who pours', () => {
    fc.assert(
      fc.property(steps, (taken) => {
        const { bench, exceptions } = world()
        const people = bench.plan.people.map(({ id }) => id)
        /** What the table offers, and what somebody may decide on instead. */
        const remedyAt = (at: number, index: number): Remedy | undefined => {
          const exception = exceptions[at]!
          const { station } = bench.state.exceptions.all[exception]!
          const own = bench.plan.materials
            .filter((material) => material.for.includes(station))
            .map(({ id, unit }) => ownDose(bench.state, bench.plan, { exception, station, material: id, amount: 137.31, unit }, bench.now))
          const doses = [...bench.remedies(exception), ...own].filter((it): it is Remedy => it?.dose !== undefined)
          return doses.length ? doses[index % doses.length] : undefined
        }
        /** Confirmations that are whole, by what they are for: this book is kept by the test, not by the code under test. */
        const held: { person: PersonId; exception: EntryId; station: string; material: string; card: string; lines: readonly string[]; time: number }[] = []
        const lastPoured = new Map<string, number>()
        const mayKnow = (remedy: Remedy, person: PersonId): boolean =>
          remedy.dose!.needsCaution.every(({ card, lines }) =>
            held.some(
              (it) =>
                it.card === card && it.person === person && it.exception === remedy.exception && it.material === remedy.dose!.material &&
                it.station === remedy.station && lines.every((line) => it.lines.includes(line)) &&
                bench.now - it.time <= 3_600_000 && it.time > (lastPoured.get(`${remedy.exception}/${remedy.dose!.material}`) ?? -1),
            ),
          )
        for (const step of taken) {
          if (step.do === 'wait') bench.wait(step.minutes)
          else if (step.do === 'read') {
            const check = ['neg-1-fix-ph', 'neg-1-dev-metol', 'neg-1-dev-ph'][step.at]!
            bench.read(check, [[4.9, 4.7, 5.0, 4.95], [1.253, 1.307, 1.213, 1.113], [8.68, 8.66, 8.7, 8.72]][step.at]![step.value]!)
          } else if (step.do === 'look') {
            for (const remedy of bench.remedies(exceptions[step.at]!)) {
              if (!remedy.dose || !remedy.dose.needsCaution.length) continue
              const inside = peek(bench, remedy)
              expect(gives(remedy, inside), `${remedy.id} shows ${inside}`).toBe(false)
            }
          } else {
            const remedy = remedyAt(step.at, step.remedy)
            if (!remedy) continue
            const person = people[step.as]!
            const asked = { cautions: bench.cautions, person, now: bench.now, secondPerson: people[(step.as + 1) % 3] }
            if (step.do === 'caution') {
              const cards = step.flaw === 'oneCardOnly' ? remedy.dose!.needsCaution.slice(1) : remedy.dose!.needsCaution
              for (const { card, version, lines } of cards) {
                const exception = step.flaw === 'otherException' ? exceptions[(step.at + 1) % 3]! : remedy.exception!
                const material = (step.flaw === 'otherMaterial' ? 'potassium-alum' : remedy.dose!.material) as never
                bench.enter(
                  'caution',
                  {
                    card, version: step.flaw === 'wrongVersion' ? version - 1 : version, station: remedy.station, material,
                    lines: step.flaw === 'fewerLines' ? ['exhaust'] : [...lines], ...(step.flaw === 'noException' ? {} : { exception }),
                  },
                  person,
                )
                // One that names another exception is a whole one for that, where it is of the same bath.
                if (step.flaw === 'none' || step.flaw === 'oneCardOnly' || step.flaw === 'otherException') held.push({ person, exception, station: remedy.station, material: remedy.dose!.material, card, lines, time: bench.now })
              }
            } else if (step.do === 'reveal') {
              expect(remedy.dose!.amount.reveal(asked).ok).toBe(mayKnow(remedy, person))
            } else {
              const made = addOf(remedy, { ...asked, poured: { amount: step.amount, unit: remedy.dose!.unit, keyed: `${step.amount}` }, overruled: 'tried' })
              if (made.ok) {
                expect(mayKnow(remedy, person)).toBe(true)
                if (remedy.dose!.needsCaution.length) expect(made.data.caution).toBeDefined()
                bench.enter('add', made.data, person)
                lastPoured.set(`${remedy.exception}/${remedy.dose!.material}`, bench.now)
              } else if (!mayKnow(remedy, person)) {
                expect(made.needs.length).toBeGreaterThan(0)
                expect(made.problems).toEqual([])
              }
            }
          }
        }
      }),
      { numRuns: 150 },
    )
  }, 120_000)

  it('is in nothing that a screen, a log line or a copy could show', () => {
    const { bench, exceptions } = world()
    for (const exception of exceptions)
      for (const remedy of bench.remedies(exception)) {
        if (!remedy.dose?.needsCaution.length) continue
        const inside = peek(bench, remedy)
        for (const shown of [remedy, { ...remedy.dose.amount }, JSON.parse(JSON.stringify(remedy)), Object.entries(remedy.dose.amount), String(remedy.dose.amount)])
          expect(gives(shown, inside), remedy.id).toBe(false)
      }
  })

  it('of one material does not come out with the caution of another that belongs to the same correction', () => {
    const { bench, exceptions } = world()
    const [metol] = bench.remedies(exceptions[1]!).filter(({ id }) => id === 'constituent:metol')
    const amounts = bench.remedies(exceptions[1]!).filter(({ dose, id }) => dose && id !== 'constituent:metol').map((remedy) => peek(bench, remedy))
    const revealed = bench.opened(metol!)
    for (const amount of amounts) expect(gives(revealed, amount)).toBe(false)
  })
})

describe('a caution', () => {
  it('is read again when an hour has gone by', () => {
    const { bench, exceptions } = world()
    const remedy = bench.remedy(exceptions[0]!, 'acid:acetic-acid-28')
    bench.confirmCautions(remedy)
    expect(bench.reveal(remedy).ok).toBe(true)
    bench.wait(60)
    expect(bench.reveal(remedy).ok).toBe(true)
    bench.wait(1)
    expect(bench.reveal(remedy).ok).toBe(false)
  })

  it('that was withdrawn counts for nothing', () => {
    const { bench, exceptions } = world()
    const remedy = bench.remedy(exceptions[0]!, 'acid:acetic-acid-28')
    bench.confirmCautions(remedy)
    bench.enter('withdraw', { ref: bench.cautions[0]!.id, why: 'wrong bath' })
    expect(bench.reveal(remedy).ok).toBe(false)
  })

  it('of a single dose holds two lines, one of the acid’s card and one of the pouring', () => {
    const { bench, exceptions } = world()
    const { needsCaution } = bench.remedy(exceptions[0]!, 'acid:acetic-acid-28').dose!
    expect(needsCaution.flatMap(({ lines }) => lines)).toHaveLength(2)
    for (const { card } of needsCaution) expect(cardById(card)).toBeDefined()
  })
})

describe('what is recorded of a dose', () => {
  const ready = () => {
    const bench = new Bench((plan) => {
      plan.materials.find(({ id }) => id === 'acetic-acid-28')!.secondPerson = true
    }).safe()
    const remedy = bench.remedy(bench.confirmed('neg-1-fix-ph', 4.92), 'acid:acetic-acid-28')
    const { amount } = bench.opened(remedy)
    const asked = { cautions: bench.cautions, person: bench.person, now: bench.now, secondPerson: bench.plan.people[1]!.id }
    return { bench, remedy, amount, asked }
  }

  it('names the amounts, the confirmation, the second person, the wait and the model’s prediction for what was poured', () => {
    const { remedy, amount, asked } = ready()
    const made = addOf(remedy, { ...asked, poured: { amount: amount / 1000, unit: 'L', keyed: '0.9' }, lot: 'A1' })
    expect(made).toMatchObject({ ok: true, data: { portion: 1, planned: { amount, unit: 'mL' }, poured: { unit: 'L' }, lot: 'A1', mixSeconds: 1320, secondPerson: asked.secondPerson } })
    if (made.ok) expect(made.data.predicted!.to).toBeCloseTo(4.71, 1)
  })

  it('asks for the second person where the plan does, and for another one than the first', () => {
    const { remedy, amount, asked } = ready()
    const poured = { amount, unit: 'mL' as const, keyed: 'x' }
    expect(addOf(remedy, { ...asked, secondPerson: undefined, poured })).toMatchObject({ ok: false, problems: [{ code: 'secondPersonNeeded' }] })
    expect(addOf(remedy, { ...asked, secondPerson: asked.person, poured })).toMatchObject({ ok: false, problems: [{ code: 'secondPersonIsTheFirst' }] })
  })

  it('keeps the reason where another amount was poured', () => {
    const { remedy, amount, asked } = ready()
    const poured = { amount: amount * 0.8, unit: 'mL' as const, keyed: 'x' }
    expect(addOf(remedy, { ...asked, poured })).toMatchObject({ ok: false, problems: [{ code: 'sayWhy' }] })
    expect(addOf(remedy, { ...asked, poured, overruled: 'jug was empty' })).toMatchObject({ ok: true, data: { overruled: 'jug was empty' } })
  })
})

/** What is inside, as only a whole confirmation would tell: asked on a copy of the log, so that the world stays as it was. */
const peek = (bench: Bench, remedy: Remedy): number => {
  const cautions = remedy.dose!.needsCaution.map(({ card, version, lines }, index) => ({
    id: `00000000-0000-7000-8000-ffffffffff0${index}` as EntryId,
    time: bench.now,
    person: bench.person,
    data: { card, version, lines: [...lines], station: remedy.station, material: remedy.dose!.material as never, exception: remedy.exception! },
  }))
  const revealed = remedy.dose!.amount.reveal({ cautions, person: bench.person, now: bench.now })
  return revealed.ok ? revealed.amount : Number.NaN
}

describe('the amounts of a batch', () => {
  const fixing = {
    name: 'a fixing bath',
    steps: [
      { substance: 'sodiumThiosulfate' as const, form: 'pentahydrate' as const, gramsPerLitre: 240 },
      { substance: 'sodiumSulfite' as const, gramsPerLitre: 12.7 },
      { substance: 'aceticAcid' as const, millilitresPerLitre: 47.3 },
      { substance: 'potassiumAlum' as const, form: 'dodecahydrate' as const, gramsPerLitre: 15.1 },
    ],
  }
  const person = new Bench().person

  it('come out step by step only, each by its own cards, held for this batch by the one who mixes', () => {
    const moves = fc.array(
      fc.record({ order: fc.nat(4), card: fc.nat(2), flaw: fc.constantFrom('none', 'wrongVersion', 'fewerLines', 'somebodyElse', 'beforeTheBatch'), ticks: fc.boolean() }),
      { maxLength: 24 },
    )
    fc.assert(
      fc.property(moves, (taken) => {
        const bench = new Bench()
        const made = beginSheet({ formula: fixing, litres: 61.7, station: 'mixing' as never, meantFor: 'neg-1-fix' as never, startedAt: bench.now })
        if (!made.ok) throw new Error(made.why.code)
        let { sheet } = made
        /** Whole confirmations, in the test's own book. */
        const held = new Set<string>()
        for (const { order, card, flaw, ticks } of taken) {
          bench.wait(0.1)
          const step = sheet.steps[order]
          if (!step) continue
          const asked = { cautions: bench.cautions, person, now: bench.now }
          expect(step.amount.reveal(asked).ok).toBe(step.needsCaution.every((it) => held.has(it.card)))
          if (ticks) {
            const isNext = nextStep(sheet)?.order === order
            const ticked = tick(sheet, order, asked)
            expect(ticked.ok).toBe(isNext && step.needsCaution.every((it) => held.has(it.card)))
            if (ticked.ok) sheet = ticked.sheet
            continue
          }
          const needed = step.needsCaution[card % Math.max(1, step.needsCaution.length)]
          if (!needed) continue
          const entered = { card: needed.card, version: flaw === 'wrongVersion' ? needed.version + 1 : needed.version, lines: flaw === 'fewerLines' ? ['exhaust'] : [...needed.lines], station: 'mixing' as never }
          if (flaw === 'beforeTheBatch') {
            const { now } = bench
            bench.now = sheet.startedAt - 60_000
            bench.enter('caution', entered)
            bench.now = now
          } else bench.enter('caution', entered, flaw === 'somebodyElse' ? bench.plan.people[1]!.id : person)
          if (flaw === 'none') held.add(needed.card)
          for (const it of sheet.steps) if (!it.needsCaution.every((one) => held.has(one.card)) && it.needsCaution.length) expect(gives({ sheet, text: JSON.stringify(sheet) }, amountOf(fixing, it.substance, 61.7))).toBe(false)
        }
      }),
      { numRuns: 150 },
    )
  }, 120_000)
})

/** What the batch takes of a substance: its figure in the formula times the litres. */
const amountOf = (formula: { steps: readonly { substance: string; gramsPerLitre?: number; millilitresPerLitre?: number }[] }, substance: string, litres: number): number => {
  const step = formula.steps.find((it) => it.substance === substance)!
  return (step.gramsPerLitre ?? step.millilitresPerLitre!) * litres
}

describe('a dose of one’s own decision', () => {
  const decided = (material: string, station = 'neg-1-fix') => {
    const bench = new Bench().safe()
    const exception = bench.confirmed('neg-1-fix-ph', 4.92)
    const remedy = ownDose(bench.state, bench.plan, { exception, station: station as never, material: material as MaterialId, amount: 250, unit: 'mL' }, bench.now)!
    bench.confirmCautions(remedy)
    return { bench, exception, remedy, asked: { cautions: bench.cautions, person: bench.person, now: bench.now } }
  }
  const poured = { amount: 250, unit: 'mL' as const, keyed: '250' }

  it('is kept with its reason, and without one is not taken', () => {
    const { remedy, asked } = decided('sulfite-solution')
    expect(addOf(remedy, { ...asked, poured })).toMatchObject({ ok: false, problems: [{ code: 'sayWhyOwn' }] })
    expect(addOf(remedy, { ...asked, poured, overruled: 'the bath smells' })).toMatchObject({ ok: true, data: { overruled: 'the bath smells', planned: { amount: 250 }, poured } })
  })

  it('of acid takes two persons, since nothing has computed it', () => {
    const { bench, remedy, asked } = decided('acetic-acid-28')
    expect(addOf(remedy, { ...asked, poured, overruled: 'as last week' })).toMatchObject({ ok: false, problems: [{ code: 'secondPersonNeeded' }] })
    expect(addOf(remedy, { ...asked, secondPerson: bench.plan.people[1]!.id, poured, overruled: 'as last week' })).toMatchObject({ ok: true })
  })

  it('mixes and is read again like any other', () => {
    const { bench, exception, remedy, asked } = decided('sulfite-solution')
    const made = addOf(remedy, { ...asked, poured, overruled: 'the bath smells' })
    if (!made.ok) throw new Error('not taken')
    bench.enter('add', made.data)
    const next = () => ownDose(bench.state, bench.plan, { exception, station: 'neg-1-fix' as never, material: 'sulfite-solution' as MaterialId, amount: 250, unit: 'mL' }, bench.now)!
    expect(next().refused).toMatchObject({ code: 'stillMixing' })
    bench.wait(remedy.wait!.seconds / 60 + 1)
    expect(next().refused).toMatchObject({ code: 'readAgainFirst' })
    bench.read('neg-1-fix-ph', 4.9)
    expect(next().refused).toBeUndefined()
  })
})
