import { calculation } from '../calculation.ts'
import { below } from '../decimal.ts'
import type { Values } from '../field.ts'
import { noAnswer } from '../refusal.ts'
import { bracketedRoot } from '../root.ts'
import { factsOf, type Substance } from '../substances.ts'
import { balanceAt } from './balance.ts'
import { bufferCapacityAt } from './buffer-capacity.ts'
import { checkedStrength, equilibriumOf, selfConsistent, strongChargeAt, withStrongCharge } from './equilibrium.ts'
import { activity, bath, borate, celsius } from './fields.ts'
import { mediumAt, type Medium } from './medium.ts'
import { reagent, reagentOf, type Reagent } from './reagent.ts'
import { combined, oneMolar, solutionOf, type Solution } from './solution.ts'
import { gammaSteps, shareSteps } from './working.ts'

const inputs = {
  celsius,
  litres: { kind: 'number', unit: 'L', says: 'volume of the bath', above: 0, atMost: 1_000_000 },
  bath,
  measuredPh: { kind: 'number', unit: '1', says: 'what the meter reads', atLeast: 0, atMost: 14 },
  aimPh: { kind: 'number', unit: '1', says: 'what it should read', atLeast: 0, atMost: 14 },
  reagent,
  responseFactor: {
    kind: 'number',
    unit: '1',
    says: 'what this bath has shown before: observed change ÷ predicted change; divides the amount',
    atLeast: 0.1,
    atMost: 10,
    preset: 1,
  },
  activity,
  borate,
} as const

/** A dose is looked for up to as much solution as there is bath, or this much solid. */
const mostGramsPerLitre = 1000

interface Worked {
  medium: Medium
  /** The bath with the charge that makes the model agree with the meter. */
  anchored: Solution
  ionicStrength: number
  unmeasured: number
  modelPh: number
  material: Reagent
  /** mol of reagent for each litre of bath, before the response factor. */
  molPerLitre: number
  mixed: (molPerLitre: number) => Solution
  bufferCapacity: number
}

/**
 * The dose, anchored to the meter: (1) the strong charge that must be there, unmeasured, for the model to give `measuredPh`; (2) the amount of reagent
 * at which, diluted by its own volume, the charges balance at `aimPh`. At a fixed pH and ionic strength the net charge times the volume is a
 * straight line in the amount, so the root is single; it is bracketed between nothing and the most that is looked for.
 */
const worked = (given: Values<typeof inputs>): Worked => {
  const { measuredPh, aimPh } = given
  const medium = mediumAt(given)
  const listed = solutionOf(given.bath, 'bath')
  const material = reagentOf(given.reagent)
  const oneMole = oneMolar(given.reagent.substance, 'reagent.substance')
  const { strongCharge: unmeasured, ionicStrength } = strongChargeAt(medium, listed, measuredPh)
  checkedStrength(ionicStrength)
  const anchored = withStrongCharge(listed, unmeasured)
  const mixed = (molPerLitre: number): Solution => {
    const litres = 1 + molPerLitre * material.litresPerMole
    return combined([
      { solution: anchored, times: 1 / litres },
      { solution: oneMole, times: molPerLitre / litres },
    ])
  }
  const residual = (molPerLitre: number): number => {
    const solution = mixed(molPerLitre)
    const strength = selfConsistent((assumed) => balanceAt(medium, solution, aimPh, assumed).squares / 2)
    return balanceAt(medium, solution, aimPh, strength).charge
  }
  const most = material.unit === 'mL' ? 1 / material.litresPerMole : mostGramsPerLitre / material.amountPerMole
  const reaches = (): boolean => {
    const lack = residual(0)
    const brought = chargeBrought(medium, oneMole, aimPh, ionicStrength)
    return lack * brought < 0 && lack * residual(most) <= 0
  }
  if (aimPh !== measuredPh && !reaches()) throw noAnswer('aimPh', aimPh, reachText(medium, mixed(most), measuredPh, given.reagent.substance))
  const molPerLitre = aimPh === measuredPh ? 0 : bracketedRoot(residual, { low: 0, high: most, tolerance: most * 1e-13 })
  return {
    medium,
    anchored,
    ionicStrength,
    unmeasured,
    modelPh: equilibriumOf(medium, listed).pH,
    material,
    molPerLitre,
    mixed,
    bufferCapacity: bufferCapacityAt(medium, anchored, measuredPh),
  }
}

/** Net charge that a mol of reagent brings at a pH; a salt that neither gives nor takes protons brings none. */
const chargeBrought = (medium: Medium, oneMole: Solution, pH: number, ionicStrength: number): number => {
  const empty: Solution = { totals: oneMole.totals.map(() => 0), strongCharge: 0, strongSquares: 0 }
  const brought = balanceAt(medium, oneMole, pH, ionicStrength).charge - balanceAt(medium, empty, pH, ionicStrength).charge
  return Math.abs(brought) < 1e-9 ? 0 : brought
}

const reachText = (medium: Medium, utmost: Solution, measuredPh: number, substance: Substance): string => {
  const limit = equilibriumOf(medium, utmost).pH
  const ends = limit < measuredPh ? [limit.toFixed(2), measuredPh] : [measuredPh, limit.toFixed(2)]
  return `pH ${ends.join(' to ')}, which is as far as this ${factsOf(substance).name} moves this bath`
}

/**
 * What to add before re-reading: half of a computed acid or hydroxide; the whole of a mild reagent if it is to move the bath by less than 0.1 pH,
 * else half. Common practice, no source.
 */
const firstShare = ({ measuredPh, aimPh, reagent: { substance } }: Pick<Values<typeof inputs>, 'measuredPh' | 'aimPh' | 'reagent'>): number =>
  factsOf(substance).nature === 'mild' && below(Math.abs(aimPh - measuredPh), 0.1) ? 1 : 0.5

export const acidBaseDose = calculation({
  id: 'acidBase.dose',
  title: 'Reagent that brings a bath to its pH',
  inputs,
  outputs: {
    amount: { kind: 'number', unit: 'mL or g', unitIn: 'unit', says: 'reagent for the whole bath' },
    unit: { kind: 'choice', of: ['mL', 'g'], says: 'unit of the amounts' },
    firstPortion: { kind: 'number', unit: 'mL or g', unitIn: 'unit', says: 'what to add before mixing and reading again' },
    predictedPh: { kind: 'number', unit: '1', says: 'pH after the whole amount, by the anchored model and the response shown before' },
    firstPortionPh: { kind: 'number', unit: '1', says: 'pH after the first portion' },
    bufferCapacity: { kind: 'number', unit: 'mol/L', says: 'mol of strong base a litre takes for one pH, at the measured pH' },
    modelPh: { kind: 'number', unit: '1', says: 'pH of the bath as listed, before anchoring' },
    unmeasuredMolPerLitre: { kind: 'number', unit: 'mol/L', says: 'strong base (or, negative, acid) that the list must lack for the meter to be right' },
    reagentMolPerLitre: { kind: 'number', unit: 'mol/L', says: 'reagent for each litre of bath' },
  },
  formula: '(1) Q from Σ z c + Q = 0 at the measured pH; (2) n from Σ z c + (Q + n z) ÷ (1 + n v) = 0 at the aim; amount = n × litres ÷ response factor',
  source: 'Charge balance as in acidBase.pH; first portion: common practice, no source',
  domain:
    '0 to 60 °C, pH 0 to 14, up to as much solution as bath or 1000 g/L of a solid, whose own volume is neglected. The anchor takes up what the list misses near the measured pH; the further the aim, the more the model itself counts: add in portions and read again.',
  example: {
    inputs: {
      celsius: 25,
      litres: 1,
      bath: [
        { substance: 'metol', gramsPerLitre: 2 },
        { substance: 'sodiumSulfite', gramsPerLitre: 100 },
        { substance: 'hydroquinone', gramsPerLitre: 5 },
        { substance: 'borax', form: 'decahydrate', gramsPerLitre: 2 },
      ],
      measuredPh: 8.645,
      aimPh: 8.445,
      reagent: { substance: 'aceticAcid', percentByMass: 28, gramsPerMillilitre: 1.0361 },
    },
    result: { amount: 1.86, unit: 'mL', predictedPh: 8.445 },
    tolerance: 0.01,
    source: 'the same charge balance in an independent solver (scipy), without the acid’s own volume',
  },
  run: (given) => {
    const { medium, unmeasured, modelPh, material, molPerLitre, mixed, bufferCapacity } = worked(given)
    const amount = (molPerLitre * material.amountPerMole * given.litres) / given.responseFactor
    const share = firstShare(given)
    return {
      amount,
      unit: material.unit,
      firstPortion: amount * share,
      predictedPh: equilibriumOf(medium, mixed(molPerLitre)).pH,
      firstPortionPh: equilibriumOf(medium, mixed(molPerLitre * share)).pH,
      bufferCapacity,
      modelPh,
      unmeasuredMolPerLitre: unmeasured,
      reagentMolPerLitre: molPerLitre / given.responseFactor,
    }
  },
  steps: (given, { amount, unit, firstPortion, firstPortionPh, predictedPh, bufferCapacity, modelPh, unmeasuredMolPerLitre }) => {
    const { medium, anchored, ionicStrength, material, molPerLitre } = worked(given)
    const share = firstShare(given)
    return [
      { says: 'pH of the bath as listed, before anchoring', formula: 'Σ z c = 0', value: modelPh, unit: 'pH' },
      { says: 'pH the meter reads', value: given.measuredPh, unit: 'pH' },
      { says: 'strong base (negative: acid) that must be there unmeasured', formula: 'Q = −Σ z c at the measured pH', value: unmeasuredMolPerLitre, unit: 'mol/L' },
      ...gammaSteps(medium, ionicStrength),
      ...shareSteps(medium, anchored, { pH: given.measuredPh, ionicStrength }),
      { says: 'buffer capacity at the measured pH', formula: 'β = dC(base)/dpH', value: bufferCapacity, unit: 'mol/L per pH' },
      { says: 'first estimate, for comparison: capacity times the change wanted', formula: 'β × |ΔpH|', value: bufferCapacity * Math.abs(given.aimPh - given.measuredPh), unit: 'mol/L of strong acid or base' },
      { says: `${factsOf(given.reagent.substance).name} for each litre of bath, its own volume counted`, formula: 'Σ z c = 0 at the aim', value: molPerLitre, unit: 'mol/L' },
      ...(unit === 'mL'
        ? [{ says: 'strength of the reagent', formula: given.reagent.percentByMass === undefined ? 'as given' : '10 × % × ρ ÷ M', value: 1 / material.litresPerMole, unit: 'mol/L' }]
        : [{ says: 'molar mass of the solid as weighed', value: material.amountPerMole, unit: 'g/mol' }]),
      { says: 'response this bath has shown before', formula: 'observed ÷ predicted change', value: given.responseFactor, unit: '1' },
      { says: `amount for ${given.litres} L`, formula: unit === 'mL' ? 'mol/L × L ÷ strength ÷ response' : 'mol/L × L × M ÷ response', value: amount, unit },
      { says: share === 1 ? 'first portion: the whole, a mild reagent and a change under 0.1 pH' : 'first portion: half, then mix and read again', formula: `${share} × amount`, value: firstPortion, unit },
      { says: 'pH expected after the first portion', value: firstPortionPh, unit: 'pH' },
      { says: 'pH expected after the whole amount', formula: 'Σ z c = 0', value: predictedPh, unit: 'pH' },
    ]
  },
})
