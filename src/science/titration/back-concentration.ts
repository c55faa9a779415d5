import { calculation } from '../calculation.ts'
import { above, same } from '../decimal.ts'
import { noAnswer } from '../refusal.ts'
import { dilutionFactor, equivalentMassGramsPerEquivalent, normality, sampleMillilitres } from './fields.ts'

export const titrationBackConcentration = calculation({
  id: 'titration.backConcentration',
  title: 'Concentration by back-titration',
  inputs: {
    excessMillilitres: { kind: 'number', unit: 'mL', says: 'reagent added in excess', above: 0, atMost: 10_000 },
    excessNormality: normality('strength of the reagent in excess'),
    backMillilitres: { kind: 'number', unit: 'mL', says: 'titrant that takes up what was left', atLeast: 0, atMost: 10_000 },
    backNormality: normality('strength of the back-titrant'),
    sampleMillilitres,
    equivalentMassGramsPerEquivalent,
    dilutionFactor,
  },
  outputs: { gramsPerLitre: { kind: 'number', unit: 'g/L', says: 'concentration in the bath' } },
  formula: 'g/L = (Vx Nx − Vb Nb) E D ÷ S',
  source: 'definition of normality; common to every back-titration',
  domain: 'The reagent must really be in excess: with no back-titrant used at all the answer is only a lower bound, and is refused.',
  example: {
    inputs: { excessMillilitres: 25, excessNormality: 0.1, backMillilitres: 9.27, backNormality: 0.1, sampleMillilitres: 1, equivalentMassGramsPerEquivalent: 63.02 },
    result: { gramsPerLitre: 99.13 },
    tolerance: 0.005,
    source: 'sulfite by iodine and thiosulfate, worked out',
  },
  run: ({ excessMillilitres, excessNormality, backMillilitres, backNormality, sampleMillilitres: sample, equivalentMassGramsPerEquivalent: mass, dilutionFactor: dilution }) => {
    const added = excessMillilitres * excessNormality
    const left = backMillilitres * backNormality
    if (backMillilitres === 0) throw noAnswer('backMillilitres', 0, 'more than 0 mL: with nothing left over there was no excess')
    if (above(left, added))
      throw noAnswer('backMillilitres', backMillilitres, `at most ${Number((added / backNormality).toPrecision(6))} mL, all of the reagent that was in excess`)
    return { gramsPerLitre: ((same(left, added) ? 0 : added - left) * mass * dilution) / sample }
  },
  steps: ({ excessMillilitres, excessNormality, backMillilitres, backNormality, sampleMillilitres: sample, equivalentMassGramsPerEquivalent: mass, dilutionFactor: dilution }, { gramsPerLitre }) => [
    { says: 'reagent added', formula: 'Vx × Nx', value: excessMillilitres * excessNormality, unit: 'meq' },
    { says: 'reagent left over', formula: 'Vb × Nb', value: backMillilitres * backNormality, unit: 'meq' },
    { says: 'taken up by the sample', value: excessMillilitres * excessNormality - backMillilitres * backNormality, unit: 'meq' },
    { says: 'in the bath', formula: `meq × ${mass} × ${dilution} ÷ ${sample}`, value: gramsPerLitre, unit: 'g/L' },
  ],
})
