import { calculation } from '../calculation.ts'
import { blankMillilitres, dilutionFactor, equivalentMassGramsPerEquivalent, normality, sampleMillilitres, titrantMillilitres } from './fields.ts'
import { netMillilitres } from './net.ts'

export const titrationConcentration = calculation({
  id: 'titration.concentration',
  title: 'Concentration by direct titration',
  inputs: {
    titrantMillilitres,
    blankMillilitres,
    normality: normality('strength of the titrant'),
    sampleMillilitres,
    equivalentMassGramsPerEquivalent,
    dilutionFactor,
    recoveryFraction: { kind: 'number', unit: '1', says: 'share of the substance that the method finds', above: 0, atMost: 2, preset: 1 },
  },
  outputs: { gramsPerLitre: { kind: 'number', unit: 'g/L', says: 'concentration in the bath' } },
  formula: 'g/L = (V − V₀) N E D ÷ (S R)',
  source: 'definition of normality; common to every volumetric method',
  domain: 'One reaction to its end point; the equivalent mass must fit that reaction (hydroquinone by iodine: 110.11 ÷ 2). Interferences are the method’s affair.',
  example: {
    inputs: { titrantMillilitres: 9.08, normality: 0.05, sampleMillilitres: 10, equivalentMassGramsPerEquivalent: 55.06 },
    result: { gramsPerLitre: 2.5 },
    tolerance: 5e-4,
    source: 'hydroquinone by iodine at pH 7, worked out',
  },
  run: ({ titrantMillilitres: titrant, blankMillilitres: blank, normality: strength, sampleMillilitres: sample, equivalentMassGramsPerEquivalent: mass, dilutionFactor: dilution, recoveryFraction }) => ({
    gramsPerLitre: (netMillilitres({ titrant, blank }) * strength * mass * dilution) / (sample * recoveryFraction),
  }),
  steps: ({ titrantMillilitres: titrant, blankMillilitres: blank, normality: strength, sampleMillilitres: sample, equivalentMassGramsPerEquivalent: mass, dilutionFactor: dilution, recoveryFraction }, { gramsPerLitre }) => [
    { says: 'titrant less blank', formula: 'V − V₀', value: titrant - blank, unit: 'mL' },
    { says: 'equivalents found', formula: 'mL × N', value: (titrant - blank) * strength, unit: 'meq' },
    { says: 'mass found', formula: 'meq × E', value: (titrant - blank) * strength * mass, unit: 'mg' },
    { says: 'in a litre of what was titrated', formula: 'mg ÷ mL', value: ((titrant - blank) * strength * mass) / sample, unit: 'g/L' },
    { says: 'in the bath', formula: '× dilution ÷ recovery', value: gramsPerLitre, unit: 'g/L' },
    ...(dilution === 1 && recoveryFraction === 1 ? [] : [{ says: 'dilution and recovery counted', value: `${dilution} and ${recoveryFraction}` }]),
  ],
})
