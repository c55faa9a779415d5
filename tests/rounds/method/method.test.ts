import { describe, expect, it } from 'vitest'
import { cardsUnread } from '../../../src/corrections/cards-unread.ts'
import { demoLab } from '../../../src/demo/lab.ts'
import type { ReadingCheck } from '../../../src/plan/check.ts'
import type { PersonId, StationId } from '../../../src/plan/ids.ts'
import type { Method } from '../../../src/plan/lab-plan.ts'
import { askedFields, outputOf } from '../../../src/rounds/method/asked.ts'
import { endPointsOf, readCurve, withPoint } from '../../../src/rounds/method/curve.ts'
import { isUsable, titrantsNow } from '../../../src/rounds/method/titrants.ts'
import { determine, together, writtenValue } from '../../../src/rounds/method/work-out.ts'
import { cardById, cards } from '../../../src/safety/cards.ts'
import { cardsNeeded } from '../../../src/safety/needed.ts'
import { calculationById } from '../../../src/science/catalogue.ts'
import { hour, LabLog } from '../../projections/log.ts'

const plan = demoLab()
const start = Date.parse('2026-01-12T06:00:00Z')
const day = 24 * hour
const checkOf = (id: string): ReadingCheck => plan.checks.find((it): it is ReadingCheck => it.kind === 'reading' && it.id === id)!
const methodOf = (id: string): Method => plan.methods.find((it) => it.id === id)!
const worked = (checkId: string, keyed: Record<string, number>, given: Method['given'] = {}) => {
  const check = checkOf(checkId)
  const found = methodOf(check.method!)
  const method = { ...found, given: { ...found.given, ...given } }
  return determine({ check, method, calculation: calculationById(method.calculation!), titrants: [], keyed })
}

describe('methods of the demo bench', () => {
  it('each check that is worked at the bench gives a number in a unit that it knows', () => {
    for (const check of plan.checks) {
      if (check.kind !== 'reading' || !check.method) continue
      const method = methodOf(check.method)
      if (!method.calculation) continue
      const calculation = calculationById(method.calculation)
      expect(calculation, method.id).toBeDefined()
      expect(outputOf(check, calculation!).name, check.id).toBeTruthy()
      for (const field of [...Object.keys(method.given ?? {}), ...Object.keys(method.titrants ?? {}), ...Object.keys(method.asks ?? {})]) expect(Object.keys(calculation!.inputs), `${method.id}.${field}`).toContain(field)
    }
  })

  it('every caution that a method names is a card, and solvents, acid and iodine have one before their step', () => {
    for (const { caution, steps } of plan.methods) for (const id of [caution, ...steps.map((step) => step.caution)]) if (id) expect(cards.map((card) => card.id)).toContain(id)
    expect(methodOf('hydroquinone').steps[0]!.caution).toBe('op-solvent-extraction')
    expect(methodOf('metol').steps[0]!.caution).toBe('op-solvent-extraction')
    for (const id of ['bromide', 'borax', 'carbonate', 'sulfite-fixing']) expect(methodOf(id).steps[0]!.caution, id).toBe('op-acidify-sample')
  })

  it('asks only for what neither plan nor titrant nor curve gives', () => {
    const names = (id: string): string[] => askedFields(methodOf(checkOf(id).method!), checkOf(id), calculationById(methodOf(checkOf(id).method!).calculation ?? '')).map(({ name }) => name)
    expect(names('neg-1-dev-sulfite')).toEqual(['backMillilitres'])
    expect(names('neg-1-dev-bromide')).toEqual([])
    expect(names('neg-1-dev-metol')).toEqual(['titrantMillilitres', 'blankMillilitres'])
    expect(names('neg-1-dev-sg')).toEqual(['reading', 'readAtCelsius'])
    expect(names('neg-1-fix-silver')).toEqual(['value'])
  })
})

describe('published determinations through the bench’s own path', () => {
  it('TI-1, iodate against thiosulfate: 0.1210 g and 41.64 mL are 0.08147 N (Skoog, worked out)', () => {
    const result = worked('thiosulfate-strength', { primaryStandardGrams: 0.121, titrantMillilitres: 41.64 })
    expect(result.ok && result.value).toBeCloseTo(0.08147, 5)
  })
  it('hydroquinone, 9.08 mL of 0.05 N on 10 mL, is 2.50 g/L', () => {
    const result = worked('neg-1-dev-hydroquinone', { titrantMillilitres: 9.08 }, { normality: 0.05, sampleMillilitres: 10 })
    expect(result.ok && result.value).toBeCloseTo(2.5, 3)
  })
  it('sulfite, 25 mL of 0.1 N iodine less 9.27 mL back on 1 mL, is 99.13 g/L', () => {
    const result = worked('neg-1-dev-sulfite', { backMillilitres: 9.27 }, { excessMillilitres: 25, excessNormality: 0.1, backNormality: 0.1, sampleMillilitres: 1 })
    expect(result.ok && result.value).toBeCloseTo(99.13, 2)
  })
  it('a glass hydrometer of 20 °C that reads 1.100 at 30 °C stands in 1.0997 (ISO 649 practice)', () => {
    const result = worked('neg-1-dev-sg', { reading: 1.1, readAtCelsius: 30 }, { bathExpansion: 'none' })
    expect(result.ok && result.value).toBeCloseTo(1.099725, 6)
  })
  it('thiosulfate left in film: what archives allow, 1.4 µg/cm²', () => {
    const result = worked('residual-thiosulfate', { absorbance: 0.36, blankAbsorbance: 0.01, microgramsPerAbsorbance: 40 })
    expect(result.ok && result.value).toBeCloseTo(1.4, 9)
  })
  it('Harvey’s table 9.5, pasted: the second derivative at 15.67 mL', () => {
    const text = 'mL\tpH\n0\t2.89\n2\t4.52\n4\t5.06\n10\t5.89\n12\t6.15\n14\t6.63\n15\t7.08\n15.5\t7.75\n15.6\t8.40\n15.7\t9.29\n15.8\t10.07\n16\t10.65\n17\t11.34\n18\t11.63\n20\t12.00\n24\t12.41\n'
    const read = readCurve(text)
    if (!read.ok) throw new Error(read.problem.code)
    const ends = endPointsOf(read.points)
    expect(ends.secondDerivative.ok && ends.secondDerivative.millilitres).toBeCloseTo(15.669, 3)
  })
  it('a weak acid drawn by Gran’s own law, V·10^−pH = Ka·(Ve − V): his line meets zero at Ve', () => {
    const points = [2, 4, 6, 8, 10, 11, 12].map((millilitres) => ({ millilitres, reading: -Math.log10((1.8e-5 * (12.5 - millilitres)) / millilitres) }))
    const ends = endPointsOf(points)
    expect(ends.gran.ok && ends.gran.millilitres).toBeCloseTo(12.5, 6)
  })
  it('what the calculation refuses is a refusal, and no number', () => {
    expect(worked('neg-1-dev-sulfite', { backMillilitres: 0 }, { excessMillilitres: 25, excessNormality: 0.1, backNormality: 0.1, sampleMillilitres: 1 })).toMatchObject({ ok: false, refusal: { field: 'backMillilitres' } })
  })
})

describe('determinations together', () => {
  const method = { ...methodOf('hydroquinone'), repeatabilityLimit: 0.08 }
  it('two that repeat give their mean, two that do not ask for a third, three that do not the middle one', () => {
    expect(together([1.5, 1.56], method)).toMatchObject({ taken: 'mean', repeats: true })
    expect(together([1.5, 1.6], method).taken).toBe('thirdNeeded')
    expect(together([1.5, 1.7, 1.52], method)).toMatchObject({ taken: 'median', value: 1.52 })
  })
  it('is written on the step of the check', () => {
    expect(writtenValue(1.5278, checkOf('neg-1-dev-hydroquinone'))).toEqual({ value: 1.55, keyed: '1.55' })
    expect(writtenValue(239, checkOf('neg-1-fix-thiosulfate'))).toEqual({ value: 240, keyed: '240' })
  })
})

describe('a curve off the burette', () => {
  it('comes as a spreadsheet, with semicolons and decimal commas, or with blanks', () => {
    const points = [{ millilitres: 0, reading: -120 }, { millilitres: 1.5, reading: 231.5 }]
    for (const text of ['0\t-120\n1.5\t231.5', 'mL;mV\n0;−120\n1,5;231,5\n', '0 -120\n1.5 231.5', '0,-120\n1.5,231.5']) expect(readCurve(text), text).toEqual({ ok: true, points })
  })
  it.each([
    ['1 2 3', { code: 'columns', found: 3, line: 1 }],
    ['1 2\n1 3', { code: 'notRising', before: 1, line: 2 }],
    ['1 2\n3 four', { code: 'notANumber', text: 'four', line: 2 }],
    ['1 9999', { code: 'outOfRange', text: '1 9999', line: 1 }],
  ])('%j is refused by its line', (text, problem) => {
    expect(readCurve(text)).toEqual({ ok: false, problem })
  })
  it('a point keyed anew takes the place of the old one, and one between goes between', () => {
    expect(withPoint([{ millilitres: 1, reading: 5 }, { millilitres: 3, reading: 9 }], { millilitres: 2, reading: 7 }).map(({ millilitres }) => millilitres)).toEqual([1, 2, 3])
    expect(withPoint([{ millilitres: 1, reading: 5 }], { millilitres: 1, reading: 6 })).toEqual([{ millilitres: 1, reading: 6 }])
  })
  it('says why there is no end point yet', () => {
    expect(endPointsOf([{ millilitres: 0, reading: 1 }]).secondDerivative).toMatchObject({ ok: false, refusal: { code: 'tooFew' } })
  })
})

describe('titrants', () => {
  const iodine = methodOf('thiosulfate')
  it('count by their last standardisation until that is out of date', () => {
    const log = new LabLog(plan, start)
    expect(titrantsNow(log.lab().state, plan, iodine, start)).toMatchObject([{ field: 'normality', state: 'never' }])
    log.reading('iodine-strength', 0.1012, start + hour)
    const { state } = log.lab()
    expect(titrantsNow(state, plan, iodine, start + day)).toMatchObject([{ state: 'good', value: 0.1012, standardisedAt: start + hour, expiresAt: start + hour + 8 * day }])
    expect(titrantsNow(state, plan, iodine, start + 9 * day).map(isUsable)).toEqual([false])
  })
  it('one that is far from what the bottle says is used as found', () => {
    const log = new LabLog(plan, start)
    log.reading('iodine-strength', 0.09, start + hour)
    const [titrant] = titrantsNow(log.lab().state, plan, iodine, start + day)
    expect(titrant).toMatchObject({ state: 'outOfLimits', value: 0.09 })
    expect(isUsable(titrant!)).toBe(true)
  })
})

describe('cautions of steps', () => {
  const station = 'neg-1-dev' as StationId
  const [needed] = cardsNeeded([cardById('op-solvent-extraction')!])
  const confirmed = (by: string, at: number, lines = needed!.lines, where: string = station) => ({ id: 'x' as never, time: at, person: by as PersonId, data: { card: needed!.card, version: needed!.version, lines: [...lines], station: where as StationId } })
  const unread = (line: ReturnType<typeof confirmed>, now = start + hour / 2, person = 'marta') => cardsUnread([needed!], { cautions: [line], person: person as PersonId, station, now }).length

  it('are read by the one who works, here, whole, and within the hour', () => {
    expect(unread(confirmed('marta', start))).toBe(0)
    expect(unread(confirmed('tomas', start))).toBe(1)
    expect(unread(confirmed('marta', start), start + 2 * hour)).toBe(1)
    expect(unread(confirmed('marta', start, needed!.lines.slice(0, 1)))).toBe(1)
    expect(unread(confirmed('marta', start, needed!.lines, 'pos-2-dev'))).toBe(1)
    expect(cardsUnread([needed!], { cautions: [confirmed('marta', start)], person: null, station, now: start })).toHaveLength(1)
  })
})
