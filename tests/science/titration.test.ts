import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { equilibriumOf } from '../../src/science/acidBase/equilibrium.ts'
import { mediumAt } from '../../src/science/acidBase/medium.ts'
import { combined, oneMolar } from '../../src/science/acidBase/solution.ts'
import { resultOf } from '../../src/science/evaluate.ts'
import type { Substance } from '../../src/science/substances.ts'
import { titrationBackConcentration } from '../../src/science/titration/back-concentration.ts'
import { titrationConcentration } from '../../src/science/titration/concentration.ts'
import { titrationEndPoint } from '../../src/science/titration/end-point.ts'
import { titrationStandardise } from '../../src/science/titration/standardise.ts'

const positive = (min: number, max: number) => fc.double({ min, max, noNaN: true })
const refused = (facts: object) => expect.objectContaining(facts)

describe('titrations', () => {
  it('find what was put in: standardise, then titrate, gives the mass back', () => {
    fc.assert(
      fc.property(positive(0.01, 5), positive(10, 400), positive(1, 50), positive(0, 0.5), positive(1, 100), (grams, equivalent, titrant, blank, sample) => {
        const titrantMillilitres = titrant + blank + 0.01
        const { normality } = resultOf(titrationStandardise, { primaryStandardGrams: grams, equivalentMassGramsPerEquivalent: equivalent, titrantMillilitres, blankMillilitres: blank })
        fc.pre(normality <= 100)
        const { gramsPerLitre } = resultOf(titrationConcentration, { titrantMillilitres, blankMillilitres: blank, normality, sampleMillilitres: sample, equivalentMassGramsPerEquivalent: equivalent })
        expect((gramsPerLitre * sample) / 1000 / grams).toBeCloseTo(1, 9)
      }),
    )
  })

  it('in excess and back agree with the direct titration of what was taken up', () => {
    fc.assert(
      fc.property(positive(5, 50), positive(0.01, 1), positive(0.01, 0.99), positive(1, 50), positive(10, 300), (excess, strength, share, sample, mass) => {
        const back = excess * share
        const { gramsPerLitre } = resultOf(titrationBackConcentration, { excessMillilitres: excess, excessNormality: strength, backMillilitres: back, backNormality: strength, sampleMillilitres: sample, equivalentMassGramsPerEquivalent: mass })
        const direct = resultOf(titrationConcentration, { titrantMillilitres: excess - back, normality: strength, sampleMillilitres: sample, equivalentMassGramsPerEquivalent: mass })
        expect(gramsPerLitre / direct.gramsPerLitre).toBeCloseTo(1, 8)
      }),
    )
  })

  it('count dilution and recovery', () => {
    const given = { titrantMillilitres: 10, normality: 0.1, sampleMillilitres: 5, equivalentMassGramsPerEquivalent: 60 }
    expect(resultOf(titrationConcentration, { ...given, dilutionFactor: 20, recoveryFraction: 0.8 }).gramsPerLitre).toBeCloseTo(12 * 25, 9)
    expect(resultOf(titrationConcentration, { ...given, titrantMillilitres: 0 }).gramsPerLitre).toBe(0)
  })

  it('refuse a blank above the titrant, a back-titration without excess, and more left over than was added', () => {
    const given = { normality: 0.1, sampleMillilitres: 5, equivalentMassGramsPerEquivalent: 60 }
    expect(() => resultOf(titrationConcentration, { ...given, titrantMillilitres: 0.1, blankMillilitres: 0.2 })).toThrow(refused({ field: 'titrantMillilitres', value: 0.1 }))
    expect(() => resultOf(titrationStandardise, { primaryStandardGrams: 1, equivalentMassGramsPerEquivalent: 60, titrantMillilitres: 0.2, blankMillilitres: 0.2 })).toThrow(refused({ field: 'titrantMillilitres' }))
    const back = { excessMillilitres: 3, excessNormality: 0.1, backNormality: 0.3, sampleMillilitres: 5, equivalentMassGramsPerEquivalent: 60 }
    expect(() => resultOf(titrationBackConcentration, { ...back, backMillilitres: 0 })).toThrow(refused({ field: 'backMillilitres', value: 0 }))
    expect(() => resultOf(titrationBackConcentration, { ...back, backMillilitres: 1.01 })).toThrow(refused({ field: 'backMillilitres', value: 1.01 }))
    // 3 × 0.1 and 1 × 0.3 are the same on paper, not in binary.
    expect(resultOf(titrationBackConcentration, { ...back, backMillilitres: 1 }).gramsPerLitre).toBe(0)
  })
})

/** A made curve: so many mL of a substance, titrated in the acid–base engine. */
const curve = ({ of, molPerLitre, sampleMillilitres, titrant, titrantMolPerLitre, volumes }: { of: Substance; molPerLitre: number; sampleMillilitres: number; titrant: Substance; titrantMolPerLitre: number; volumes: readonly number[] }) => {
  const medium = mediumAt({ celsius: 25, activity: 'daviesCapped', borate: 'monomers' })
  return volumes.map((millilitres) => {
    const total = sampleMillilitres + millilitres
    const mixture = combined([
      { solution: oneMolar(of, ''), times: (molPerLitre * sampleMillilitres) / total },
      { solution: oneMolar(titrant, ''), times: (titrantMolPerLitre * millilitres) / total },
    ])
    return { millilitres, reading: equilibriumOf(medium, mixture).pH }
  })
}

const every = (step: number, to: number) => Array.from({ length: Math.round(to / step) + 1 }, (_, index) => index * step)

describe('the end point', () => {
  it.each([
    ['acetic acid with sodium hydroxide', 'aceticAcid', 'sodiumHydroxide'],
    ['hydrochloric acid with sodium hydroxide', 'hydrochloricAcid', 'sodiumHydroxide'],
    ['sodium hydroxide with hydrochloric acid', 'sodiumHydroxide', 'hydrochloricAcid'],
    ['ammonia with hydrochloric acid', 'ammonia', 'hydrochloricAcid'],
  ] as const)('of %s is found by both methods, wherever it lies', (_, of, titrant) => {
    fc.assert(
      fc.property(positive(0.04, 0.2), (molPerLitre) => {
        const end = (molPerLitre * 20) / 0.1
        const points = curve({ of, molPerLitre, sampleMillilitres: 20, titrant, titrantMolPerLitre: 0.1, volumes: every(0.25, end + 8) })
        expect(resultOf(titrationEndPoint, { points, method: 'secondDerivative' }).millilitres).toBeCloseTo(end, 0)
        expect(Math.abs(resultOf(titrationEndPoint, { points, method: 'secondDerivative' }).millilitres - end)).toBeLessThan(0.25)
        const near = points.filter(({ millilitres }) => millilitres > end * 0.5)
        expect(Math.abs(resultOf(titrationEndPoint, { points: near, method: 'gran', sampleMillilitres: 20 }).millilitres - end) / end).toBeLessThan(0.02)
      }),
      { numRuns: 60 },
    )
  })

  it('by Gran is the same from millivolts as from pH', () => {
    const points = curve({ of: 'aceticAcid', molPerLitre: 0.1, sampleMillilitres: 20, titrant: 'sodiumHydroxide', titrantMolPerLitre: 0.1, volumes: every(1, 25) })
    const volts = points.map(({ millilitres, reading }) => ({ millilitres, reading: 420 - 59.159 * reading }))
    const byPh = resultOf(titrationEndPoint, { points, method: 'gran' }).millilitres
    expect(resultOf(titrationEndPoint, { points: volts, method: 'gran', celsius: 25 }).millilitres).toBeCloseTo(byPh, 3)
    expect(() => resultOf(titrationEndPoint, { points: volts, method: 'gran' })).toThrow(refused({ field: 'celsius' }))
  })

  const point = ([millilitres, reading]: readonly [number, number]) => ({ millilitres, reading })
  const made = (readings: readonly (readonly [number, number])[]) => readings.map(point)

  it.each([
    ['a flat line', made([[0, 7], [1, 7], [2, 7], [3, 7], [4, 7], [5, 7]])],
    ['a straight line', made([[0, 3], [1, 4], [2, 5], [3, 6], [4, 7], [5, 8]])],
    ['a curve that wanders', made([[0, 5], [1, 7], [2, 4], [3, 8], [4, 3], [5, 6]])],
    ['a curve cut before its step', made([[2, 4.52], [4, 5.06], [10, 5.89], [12, 6.15], [14, 6.63], [15, 7.08], [15.5, 7.75]])],
    ['a curve begun after its step', made([[15.8, 10.07], [16, 10.65], [17, 11.34], [18, 11.63], [20, 12], [24, 12.41]])],
  ])('is refused for %s', (_, points) => {
    expect(() => resultOf(titrationEndPoint, { points, method: 'secondDerivative' })).toThrow(refused({ code: 'noAnswer', field: 'points' }))
  })

  it('is refused for too few points and for volumes out of order or twice', () => {
    const good = made([[0, 3], [1, 3.2], [2, 3.5], [3, 9], [4, 9.5], [5, 9.7]])
    expect(() => resultOf(titrationEndPoint, { points: good.slice(0, 4), method: 'secondDerivative' })).toThrow(refused({ code: 'tooFew', field: 'points' }))
    expect(() => resultOf(titrationEndPoint, { points: good.slice(0, 3), method: 'gran' })).toThrow(refused({ code: 'tooFew', field: 'points' }))
    const turned = [good[0]!, good[2]!, good[1]!, ...good.slice(3)]
    for (const method of ['secondDerivative', 'gran'] as const) expect(() => resultOf(titrationEndPoint, { points: turned, method })).toThrow(refused({ field: 'points[2].millilitres', value: 1 }))
    const twice = [...good.slice(0, 3), { ...good[2]! }, ...good.slice(3)]
    expect(() => resultOf(titrationEndPoint, { points: twice, method: 'secondDerivative' })).toThrow(refused({ field: 'points[3].millilitres', value: 2 }))
  })

  it('by Gran is refused where no straight line falls to zero', () => {
    expect(() => resultOf(titrationEndPoint, { points: made([[1, 7], [2, 6.9], [3, 7.1], [4, 6.8], [5, 7.15]]), method: 'gran' })).toThrow(refused({ field: 'points' }))
    expect(() => resultOf(titrationEndPoint, { points: made([[1, 7], [2, 7], [3, 7], [4, 7]]), method: 'gran' })).toThrow(refused({ field: 'points' }))
  })
})
