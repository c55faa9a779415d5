import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { balanceAt } from '../../src/science/acidBase/balance.ts'
import { acidBaseDose } from '../../src/science/acidBase/dose.ts'
import { equilibriumOf, strongChargeAt, withStrongCharge } from '../../src/science/acidBase/equilibrium.ts'
import { acidOrder, mediumAt } from '../../src/science/acidBase/medium.ts'
import { acidBasePH } from '../../src/science/acidBase/pH.ts'
import { combined, oneMolar, pureWater, solutionOf, type Quantity } from '../../src/science/acidBase/solution.ts'
import { evaluate, resultOf } from '../../src/science/evaluate.ts'
import { Refusal } from '../../src/science/refusal.ts'
import { factsOf, substanceKeys } from '../../src/science/substances.ts'

const known = substanceKeys.filter((key) => factsOf(key).brings)

const activities = fc.constantFrom('daviesCapped', 'davies', 'ideal' as const)
const borates = fc.constantFrom('monomers', 'polymers' as const)
const celsius = fc.double({ min: 0, max: 60, noNaN: true })
const quantity = (most: number): fc.Arbitrary<Quantity> =>
  fc.record({ substance: fc.constantFrom(...known), molPerLitre: fc.oneof(fc.constant(0), fc.double({ min: 1e-9, max: 1e-3, noNaN: true }), fc.double({ min: 1e-3, max: most, noNaN: true })) })
const bath = (most = 0.5): fc.Arbitrary<Quantity[]> => fc.array(quantity(most), { maxLength: 8 })

const refusalFrom = (work: () => unknown): Refusal => {
  try {
    work()
  } catch (error) {
    if (error instanceof Refusal) return error
    throw error
  }
  throw new Error('nothing was refused')
}

const fixingBath = [
  { substance: 'sodiumThiosulfate', form: 'pentahydrate', gramsPerLitre: 240 },
  { substance: 'sodiumSulfite', gramsPerLitre: 15 },
  { substance: 'aceticAcid', gramsPerLitre: 13.93 },
  { substance: 'boricAcid', gramsPerLitre: 7.5 },
  { substance: 'potassiumAlum', form: 'dodecahydrate', gramsPerLitre: 15 },
] as const
const acid28 = { substance: 'aceticAcid', percentByMass: 28, gramsPerMillilitre: 1.0361 } as const

describe('the charge balance', () => {
  it('closes for any bath, at any temperature, by any model', () => {
    fc.assert(
      fc.property(bath(), celsius, activities, borates, (quantities, t, activity, borate) => {
        const medium = mediumAt({ celsius: t, activity, borate })
        const solution = solutionOf(quantities, 'bath')
        const { pH, ionicStrength } = equilibriumOf(medium, solution)
        const { charge, squares } = balanceAt(medium, solution, pH, ionicStrength)
        expect(Math.abs(charge)).toBeLessThanOrEqual(1e-11 * (1 + ionicStrength))
        expect(Math.abs(squares / 2 - ionicStrength)).toBeLessThanOrEqual(1e-10 * (1 + ionicStrength))
      }),
      { numRuns: 400 },
    )
  })

  it('falls as the pH rises, at constant ionic strength', () => {
    fc.assert(
      fc.property(bath(2), celsius, activities, borates, fc.double({ min: -2, max: 16, noNaN: true }), fc.double({ min: 0, max: 4, noNaN: true }), (quantities, t, activity, borate, pH, strength) => {
        const medium = mediumAt({ celsius: t, activity, borate })
        const solution = solutionOf(quantities, 'bath')
        const here = balanceAt(medium, solution, pH, strength)
        const beyond = balanceAt(medium, solution, pH + 0.01, strength)
        expect(beyond.charge).toBeLessThan(here.charge)
        // The capacity is its slope: the two agree to the curvature of a step of 0.01.
        const middle = balanceAt(medium, solution, pH + 0.005, strength)
        expect((here.charge - beyond.charge) / 0.01 / middle.capacity).toBeCloseTo(1, 2)
      }),
      { numRuns: 300 },
    )
  })

  it('comes out the same for a litre and for any mixture of equal litres', () => {
    fc.assert(
      fc.property(bath(), fc.double({ min: 0.01, max: 0.99, noNaN: true }), (quantities, share) => {
        const medium = mediumAt({ celsius: 25, activity: 'daviesCapped', borate: 'polymers' })
        const solution = solutionOf(quantities, 'bath')
        const mixed = combined([
          { solution, times: share },
          { solution, times: 1 - share },
        ])
        expect(equilibriumOf(medium, mixed).pH).toBeCloseTo(equilibriumOf(medium, solution).pH, 8)
      }),
      { numRuns: 100 },
    )
  })

  it('gives back the pH it was anchored to', () => {
    fc.assert(
      fc.property(bath(), celsius, activities, fc.double({ min: 1, max: 13, noNaN: true }), (quantities, t, activity, pH) => {
        const medium = mediumAt({ celsius: t, activity, borate: 'monomers' })
        const solution = solutionOf(quantities, 'bath')
        const { strongCharge } = strongChargeAt(medium, solution, pH)
        expect(equilibriumOf(medium, withStrongCharge(solution, strongCharge)).pH).toBeCloseTo(pH, 7)
      }),
      { numRuns: 300 },
    )
  })
})

describe('pH of a bath', () => {
  it('rises with every add of hydroxide and falls with every add of strong acid', () => {
    fc.assert(
      fc.property(bath(), celsius, fc.constantFrom('daviesCapped', 'ideal' as const), borates, fc.double({ min: 1e-6, max: 0.5, noNaN: true }), (quantities, t, activity, borate, moles) => {
        const medium = mediumAt({ celsius: t, activity, borate })
        const solution = solutionOf(quantities, 'bath')
        const added = (substance: 'sodiumHydroxide' | 'hydrochloricAcid') =>
          equilibriumOf(medium, combined([{ solution, times: 1 }, { solution: oneMolar(substance, ''), times: moles }])).pH
        const plain = equilibriumOf(medium, solution).pH
        expect(added('sodiumHydroxide')).toBeGreaterThan(plain)
        expect(added('hydrochloricAcid')).toBeLessThan(plain)
      }),
      { numRuns: 400 },
    )
  })

  it('of pure water is half of pKw from 0 to 60 °C', () => {
    for (const t of [0, 10, 25, 40, 60]) {
      const { pH } = resultOf(acidBasePH, { celsius: t, bath: [] })
      expect(pH).toBeCloseTo(mediumAt({ celsius: t, activity: 'ideal', borate: 'monomers' }).pKw / 2, 4)
    }
    expect(resultOf(acidBasePH, { celsius: 25, bath: [{ substance: 'borax', molPerLitre: 0 }] }).pH).toBeCloseTo(6.9985, 4)
  })

  it('of strong acids and bases is what their activity says', () => {
    expect(resultOf(acidBasePH, { celsius: 25, activity: 'ideal', bath: [{ substance: 'hydrochloricAcid', molPerLitre: 1 }] }).pH).toBeCloseTo(0, 6)
    expect(resultOf(acidBasePH, { celsius: 25, activity: 'ideal', bath: [{ substance: 'sodiumHydroxide', molPerLitre: 0.1 }] }).pH).toBeCloseTo(12.997, 6)
    const refusal = refusalFrom(() => resultOf(acidBasePH, { celsius: 25, activity: 'ideal', bath: [{ substance: 'hydrochloricAcid', molPerLitre: 20 }] }))
    expect(refusal).toMatchObject({ code: 'noAnswer', field: 'bath' })
  })

  it('is refused for more salt than water dissolves', () => {
    const refusal = refusalFrom(() => resultOf(acidBasePH, { celsius: 25, bath: [{ substance: 'sodiumSulfite', molPerLitre: 20 }] }))
    expect(refusal).toMatchObject({ code: 'noAnswer', field: 'bath', allowed: expect.stringContaining('30 mol/L') })
  })

  it('of a borate bath falls by its polymers where boron is plenty, and hardly where it is scarce', () => {
    const pH = (borate: 'monomers' | 'polymers', grams: number) =>
      resultOf(acidBasePH, { celsius: 25, borate, bath: [{ substance: 'borax', form: 'decahydrate', gramsPerLitre: grams }, { substance: 'boricAcid', gramsPerLitre: grams }] }).pH
    expect(pH('monomers', 20) - pH('polymers', 20)).toBeGreaterThan(0.1)
    expect(Math.abs(pH('monomers', 0.5) - pH('polymers', 0.5))).toBeLessThan(0.02)
    const { steps } = evaluate(acidBasePH, { celsius: 25, bath: [{ substance: 'borax', form: 'decahydrate', gramsPerLitre: 20 }, { substance: 'boricAcid', gramsPerLitre: 20 }] })
    expect(steps.some(({ says }) => says.includes('dimer and trimer'))).toBe(true)
  })

  it('depends on the mass through the form that was weighed', () => {
    const dry = resultOf(acidBasePH, { celsius: 25, bath: [{ substance: 'borax', gramsPerLitre: 201.22 / 20 }] })
    const crystals = resultOf(acidBasePH, { celsius: 25, bath: [{ substance: 'borax', form: 'decahydrate', gramsPerLitre: 381.363 / 20 }] })
    expect(crystals.pH).toBeCloseTo(dry.pH, 4)
  })

  it('refuses a form that a substance has not, and a substance whose constants are not known', () => {
    expect(refusalFrom(() => resultOf(acidBasePH, { celsius: 25, bath: [{ substance: 'boricAcid', form: 'decahydrate', gramsPerLitre: 1 }] }))).toMatchObject({
      field: 'bath[0].form',
      value: 'decahydrate',
      allowed: expect.stringContaining('anhydrous'),
    })
    expect(refusalFrom(() => resultOf(acidBasePH, { celsius: 25, bath: [{ substance: 'potassiumChromeAlum', gramsPerLitre: 1 }] }))).toMatchObject({ field: 'bath[0].substance' })
  })

  it('every substance alone in water has a pH between 0 and 14', () => {
    for (const substance of known) {
      const { pH } = resultOf(acidBasePH, { celsius: 25, bath: [{ substance, molPerLitre: 0.1 }] })
      expect(pH, substance).toBeGreaterThan(0)
      expect(pH, substance).toBeLessThan(14)
    }
  })
})

describe('the dose', () => {
  it('brings the anchored bath to its aim, whatever the bath, or is refused', () => {
    fc.assert(
      fc.property(
        bath(),
        celsius,
        activities,
        fc.double({ min: 2, max: 12, noNaN: true }),
        fc.double({ min: -1, max: 1, noNaN: true }),
        fc.constantFrom({ substance: 'aceticAcid', percentByMass: 28, gramsPerMillilitre: 1.0361 }, { substance: 'sodiumHydroxide', form: 'anhydrous' }, { substance: 'borax', form: 'decahydrate' }, { substance: 'sodiumHydroxide', molPerLitre: 1 } as const),
        (quantities, t, activity, measuredPh, change, reagent) => {
          const aimPh = measuredPh + change
          try {
            const { amount, predictedPh, firstPortion, firstPortionPh } = resultOf(acidBaseDose, { celsius: t, litres: 100, bath: quantities, measuredPh, aimPh, reagent, activity } as never)
            expect(amount).toBeGreaterThanOrEqual(0)
            expect(predictedPh).toBeCloseTo(aimPh, 5)
            expect(firstPortion).toBeLessThanOrEqual(amount)
            expect((firstPortionPh - measuredPh) * change).toBeGreaterThanOrEqual(-1e-9)
          } catch (error) {
            if (!(error instanceof Refusal)) throw error
            expect(error).toMatchObject({ field: 'aimPh', value: aimPh })
          }
        },
      ),
      { numRuns: 400 },
    )
  })

  const given = { celsius: 20, litres: 350, bath: fixingBath, measuredPh: 4.92, aimPh: 4.5, reagent: acid28 }

  it('of acid to a fixing bath is given by halves', () => {
    const { amount, firstPortion, unit, firstPortionPh } = resultOf(acidBaseDose, given)
    expect(unit).toBe('mL')
    expect(firstPortion).toBe(amount / 2)
    expect(firstPortionPh).toBeGreaterThan(4.5)
    expect(firstPortionPh).toBeLessThan(4.92)
  })

  it('of a mild reagent goes in whole for less than 0.1 pH, by halves for 0.1 and more', () => {
    const borax = { substance: 'borax', form: 'decahydrate' } as const
    const developer = [
      { substance: 'sodiumSulfite', gramsPerLitre: 100 },
      { substance: 'borax', form: 'decahydrate', gramsPerLitre: 2 },
    ] as const
    const share = (aimPh: number) => {
      const { amount, firstPortion } = resultOf(acidBaseDose, { celsius: 20, litres: 600, bath: developer, measuredPh: 8.5, aimPh, reagent: borax })
      return firstPortion / amount
    }
    expect(share(8.59)).toBe(1)
    // 8.6 − 8.5 is 0.0999… in binary, 0.1 on paper.
    expect(share(8.6)).toBe(0.5)
    expect(share(8.7)).toBe(0.5)
  })

  it('is divided by the response the bath has shown, and grows with the volume', () => {
    const plain = resultOf(acidBaseDose, given).amount
    expect(resultOf(acidBaseDose, { ...given, responseFactor: 0.8 }).amount).toBeCloseTo(plain / 0.8, 6)
    expect(resultOf(acidBaseDose, { ...given, litres: 700 }).amount).toBeCloseTo(2 * plain, 6)
  })

  it('counts the water that a weak reagent brings: more moles of acid as it is weaker', () => {
    const moles = (molPerLitre: number) => resultOf(acidBaseDose, { celsius: 25, litres: 1, bath: [{ substance: 'sodiumHydroxide', molPerLitre: 0.01 }], measuredPh: 11.95, aimPh: 3, reagent: { substance: 'hydrochloricAcid', molPerLitre } }).reagentMolPerLitre
    expect(moles(0.1)).toBeGreaterThan(moles(1))
    expect(moles(1)).toBeGreaterThan(moles(10))
  })

  it('is nothing when the bath stands at its aim', () => {
    expect(resultOf(acidBaseDose, { ...given, aimPh: 4.92 })).toMatchObject({ amount: 0, firstPortion: 0, predictedPh: expect.closeTo(4.92, 8) })
  })

  it('is refused, with what the reagent can reach, in the wrong direction and beyond its strength', () => {
    for (const aimPh of [5.2, 1.2]) expect(refusalFrom(() => resultOf(acidBaseDose, { ...given, aimPh }))).toMatchObject({ code: 'noAnswer', field: 'aimPh', value: aimPh, allowed: expect.stringMatching(/^pH \d\.\d\d to 4\.92/) })
    expect(refusalFrom(() => resultOf(acidBaseDose, { ...given, reagent: { substance: 'sodiumChloride', form: 'anhydrous' } }))).toMatchObject({ field: 'aimPh' })
  })

  it('refuses a reagent without its density, a liquid as a solid, and two strengths at once', () => {
    const refused = (reagent: object) => refusalFrom(() => resultOf(acidBaseDose, { ...given, reagent } as never))
    expect(refused({ substance: 'aceticAcid', percentByMass: 28 })).toMatchObject({ code: 'missing', field: 'reagent.gramsPerMillilitre' })
    expect(refused({ substance: 'sulfuricAcid', form: 'anhydrous' })).toMatchObject({ field: 'reagent.form' })
    expect(refused({ substance: 'aceticAcid', molPerLitre: 4, percentByMass: 28, gramsPerMillilitre: 1.03 })).toMatchObject({ code: 'exactlyOne', field: 'reagent' })
    expect(refused({ substance: 'aceticAcid', molPerLitre: 4, gramsPerMillilitre: 1.03 })).toMatchObject({ field: 'reagent.gramsPerMillilitre' })
    expect(refused({ substance: 'borax', form: 'heptahydrate' })).toMatchObject({ field: 'reagent.form', value: 'heptahydrate' })
  })

  it('shows how it came about', () => {
    const says = evaluate(acidBaseDose, given).steps.map((step) => step.says).join('\n')
    for (const part of ['before anchoring', 'unmeasured', 'ionic strength', 'buffer capacity', 'its own volume counted', 'response', 'first portion', 'after the whole amount']) expect(says).toContain(part)
  })

  it('takes a small part of 5 ms', () => {
    const once = (activity: 'daviesCapped' | 'davies') => {
      const runs = Array.from({ length: 60 }, () => {
        const started = performance.now()
        resultOf(acidBaseDose, { ...given, activity })
        return performance.now() - started
      }).sort((a, b) => a - b)
      return runs[30]!
    }
    once('davies')
    // A quarter of the budget at a fourfold slowdown; the median, because this machine is shared.
    expect(once('daviesCapped')).toBeLessThan(1.25)
    expect(once('davies')).toBeLessThan(1.25)
  })
})

describe('the substances', () => {
  it('leave no acid–base system without a substance that brings it', () => {
    const brought = known.flatMap((key) => Object.keys(factsOf(key).brings ?? {}))
    expect(acidOrder.filter((system) => !brought.includes(system))).toEqual([])
    expect(pureWater.totals).toHaveLength(acidOrder.length)
  })
})
