import type { Step } from '../calculation.ts'
import { logGammaPerChargeSquared } from './activity.ts'
import { sharesOf } from './balance.ts'
import { acids } from './constants.ts'
import { equilibriumOf, type Equilibrium } from './equilibrium.ts'
import { acidOrder, boricIndex, mediumAt, type Medium } from './medium.ts'
import type { Solution } from './solution.ts'

/** Lines of a working sheet that `acidBase.pH` and `acidBase.dose` share. */

export const gammaSteps = (medium: Medium, ionicStrength: number): Step[] => {
  const g = logGammaPerChargeSquared(ionicStrength, medium.activity, medium.a)
  const bracket = medium.activity === 'daviesCapped' && ionicStrength > 0.5 ? 'log γ = −A z² (√I/(1+√I) − 0.3 I), I capped at 0.5' : 'log γ = −A z² (√I/(1+√I) − 0.3 I)'
  return [
    { says: 'ionic strength of all ions together', formula: 'I = ½ Σ c z²', value: ionicStrength, unit: 'mol/L' },
    { says: 'activity coefficient of an ion of one charge', formula: medium.activity === 'ideal' ? 'γ = 1' : bracket, value: 10 ** g, unit: '1' },
    { says: 'ion product of water at this temperature', formula: 'pKw', value: medium.pKw, unit: '1' },
  ]
}

/** How each acid–base system is divided over its forms at this pH. */
export const shareSteps = (medium: Medium, solution: Solution, { pH, ionicStrength }: Equilibrium): Step[] => {
  const g = logGammaPerChargeSquared(ionicStrength, medium.activity, medium.a)
  return acidOrder.flatMap((system, index) => {
    const total = solution.totals[index]!
    if (total <= 0 || (index === boricIndex && medium.polymers.length > 0)) return []
    const { name, species } = acids[system]
    const { topCharge, pKs } = medium.systems[index]!
    const shares = sharesOf(topCharge, pKs, pH, g)
    const text = species.map((form, lost) => ({ form, share: shares[lost]! })).filter(({ share }) => share >= 0.0005)
    return [
      {
        says: `${name}, ${Number(total.toPrecision(4))} mol/L, stands as`,
        formula: `pK ${pKs.map((pK) => pK.toFixed(2)).join(', ')}`,
        value: text.map(({ form, share }) => `${form} ${(share * 100).toFixed(1)} %`).join(', '),
      },
    ]
  })
}

/** Where borate polymers would move the answer by more than a meter shows, the working says so. */
export const polymerSteps = (asked: { celsius: number; activity: Medium['activity']; borate: 'monomers' | 'polymers' }, solution: Solution, pH: number): Step[] => {
  if (asked.borate === 'polymers' || solution.totals[boricIndex]! <= 0) return []
  const other = equilibriumOf(mediumAt({ ...asked, borate: 'polymers' }), solution).pH
  if (Math.abs(other - pH) < 0.01) return []
  return [{ says: 'for comparison: the model’s pH with dimer and trimer borates counted', formula: 'borate: polymers', value: other, unit: 'pH' }]
}
