import { calculation } from '../calculation.ts'
import { same } from '../decimal.ts'
import { noAnswer } from '../refusal.ts'

/**
 * The rate at which a steady bath holds its aim: what film takes out is what replenisher brings beyond what leaves at the bath's own
 * strength. Bath leaves by overflow or on the film as fast as replenisher comes.
 */
export const bathReplenishRate = calculation({
  id: 'bath.replenishRate',
  title: 'Replenisher rate',
  inputs: {
    consumedGramsPerMetre: { kind: 'number', unit: 'g/m', says: 'what each metre of film takes out of the bath; negative when film gives it off, as bromide' },
    replenisherGramsPerLitre: { kind: 'number', unit: 'g/L', says: 'strength of the replenisher', atLeast: 0 },
    aimGramsPerLitre: { kind: 'number', unit: 'g/L', says: 'strength at which the bath is to stand', atLeast: 0 },
  },
  outputs: { millilitresPerMetre: { kind: 'number', unit: 'mL/m', says: 'replenisher for each metre of film' } },
  formula: 'rate = consumed ÷ (strength of the replenisher − aim)',
  source: 'steady balance of a well-mixed tank',
  domain:
    'Steady running, well mixed, constant volume; consumption is that of the usual footage (dense footage takes more developer, thin footage less). ' +
    'Each constituent asks for a rate of its own: one rate serves all only if the replenisher’s formula was made for it.',
  example: {
    inputs: { consumedGramsPerMetre: 0.063, replenisherGramsPerLitre: 11, aimGramsPerLitre: 5 },
    result: { millilitresPerMetre: 10.5 },
    tolerance: 1e-9,
    source: 'worked by hand',
  },
  run: ({ consumedGramsPerMetre, replenisherGramsPerLitre, aimGramsPerLitre }) => {
    if (consumedGramsPerMetre === 0) return { millilitresPerMetre: 0 }
    const brought = replenisherGramsPerLitre - aimGramsPerLitre
    if (same(brought, 0) || brought > 0 !== consumedGramsPerMetre > 0)
      throw noAnswer(
        'replenisherGramsPerLitre',
        replenisherGramsPerLitre,
        consumedGramsPerMetre > 0 ? `a number, more than the aim, ${aimGramsPerLitre} g/L` : `a number, less than the aim, ${aimGramsPerLitre} g/L`,
      )
    return { millilitresPerMetre: (1000 * consumedGramsPerMetre) / brought }
  },
  steps: ({ consumedGramsPerMetre, replenisherGramsPerLitre, aimGramsPerLitre }, { millilitresPerMetre }) => [
    { says: 'taken out by a metre of film', value: consumedGramsPerMetre, unit: 'g/m' },
    {
      says: 'brought by a litre of replenisher beyond what leaves with a litre of bath',
      formula: 'replenisher − aim',
      value: replenisherGramsPerLitre - aimGramsPerLitre,
      unit: 'g/L',
    },
    { says: 'replenisher rate', formula: 'taken out ÷ brought × 1000', value: millilitresPerMetre, unit: 'mL/m' },
  ],
})
