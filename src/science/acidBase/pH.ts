import { calculation } from '../calculation.ts'
import type { Values } from '../field.ts'
import { noAnswer } from '../refusal.ts'
import { bufferCapacityAt } from './buffer-capacity.ts'
import { checkedStrength, equilibriumOf, type Equilibrium } from './equilibrium.ts'
import { activity, bath, borate, celsius } from './fields.ts'
import { mediumAt, type Medium } from './medium.ts'
import { solutionOf, type Solution } from './solution.ts'
import { gammaSteps, polymerSteps, shareSteps } from './working.ts'

const inputs = { celsius, bath, activity, borate } as const

/** Beyond these the activity models say nothing, and no glass electrode does either. */
const lowestPh = -1
const highestPh = 15

interface Worked {
  medium: Medium
  solution: Solution
  equilibrium: Equilibrium
}

const worked = (given: Values<typeof inputs>): Worked => {
  const medium = mediumAt(given)
  const solution = solutionOf(given.bath, 'bath')
  const equilibrium = equilibriumOf(medium, solution)
  checkedStrength(equilibrium.ionicStrength)
  if (equilibrium.pH < lowestPh || equilibrium.pH > highestPh) throw noAnswer('bath', equilibrium.pH, `a bath whose pH lies between ${lowestPh} and ${highestPh}`)
  return { medium, solution, equilibrium }
}

export const acidBasePH = calculation({
  id: 'acidBase.pH',
  title: 'pH of a bath from its formula',
  inputs,
  outputs: {
    pH: { kind: 'number', unit: '1', says: 'pH at which all charges balance' },
    ionicStrength: { kind: 'number', unit: 'mol/L', says: 'half the sum of concentration times charge squared' },
    bufferCapacity: { kind: 'number', unit: 'mol/L', says: 'mol of strong base a litre takes for one pH, at this pH' },
  },
  formula: 'Σ z c = 0 over every ion; each acid by its pK at this temperature; log γ = −A z² (√I/(1+√I) − 0.3 I)',
  source:
    'Constants: NIST Standard Reference Database 46 and Goldberg 2002 (the second from memory); activity: Davies 1962; temperature: CRC Handbook, section 7. Metol’s constants are assumed.',
  domain:
    '0 to 60 °C; mol/L taken as mol/kg; closed to air; no ion pairs, precipitates, redox or protonated thiosulfate. Within 0.02 pH for standard buffers up to 0.1 mol/L. Working baths (I 1.5 to 4) lie outside every simple activity formula: expect some tenths of a pH, and anchor with a measured pH. Borate is counted as monomers unless asked otherwise: above 0.1 mol/L of boron below pH 8.8 that reads up to 0.2 pH high.',
  example: {
    inputs: { celsius: 25, bath: [{ substance: 'aceticAcid', molPerLitre: 0.1 }, { substance: 'sodiumAcetate', molPerLitre: 0.1 }] },
    result: { pH: 4.65 },
    tolerance: 0.001,
    source: 'the same model in an independent solver (PHREEQC with these constants)',
  },
  run: (given) => {
    const { medium, solution, equilibrium } = worked(given)
    return { ...equilibrium, bufferCapacity: bufferCapacityAt(medium, solution, equilibrium.pH) }
  },
  steps: (given, { pH, bufferCapacity }) => {
    const { medium, solution, equilibrium } = worked(given)
    return [
      { says: 'charge of the ions that take no part (sodium, potassium, bromide, thiosulfate …)', formula: 'Σ z c', value: solution.strongCharge, unit: 'mol/L' },
      ...gammaSteps(medium, equilibrium.ionicStrength),
      ...shareSteps(medium, solution, equilibrium),
      { says: 'pH at which positive and negative charges balance', formula: 'Σ z c = 0', value: pH, unit: 'pH' },
      ...polymerSteps(given, solution, pH),
      { says: 'buffer capacity there', formula: 'β = dC(base)/dpH', value: bufferCapacity, unit: 'mol/L per pH' },
    ]
  },
})
