import { calculation } from '../calculation.ts'
import { netMillilitres } from './net.ts'
import { blankMillilitres, equivalentMassGramsPerEquivalent, titrantMillilitres } from './fields.ts'

export const titrationStandardise = calculation({
  id: 'titration.standardise',
  title: 'Strength of a titrant against a weighed standard',
  inputs: {
    primaryStandardGrams: { kind: 'number', unit: 'g', says: 'primary standard weighed in', above: 0, atMost: 1000 },
    equivalentMassGramsPerEquivalent,
    titrantMillilitres,
    blankMillilitres,
  },
  outputs: { normality: { kind: 'number', unit: 'eq/L', says: 'equivalents in a litre of titrant' } },
  formula: 'N = 1000 m ÷ (E (V − V₀))',
  source: 'definition of normality; worked as in Skoog, Fundamentals of Analytical Chemistry',
  domain: 'Titrant beyond the blank; the equivalent mass must be that of the reaction used (potassium iodate against thiosulfate: 214.00 ÷ 6).',
  example: {
    inputs: { primaryStandardGrams: 0.8168, equivalentMassGramsPerEquivalent: 204.22, titrantMillilitres: 39.85 },
    result: { normality: 0.10037 },
    tolerance: 5e-6,
    source: 'potassium hydrogen phthalate against sodium hydroxide, worked out',
  },
  run: ({ primaryStandardGrams, equivalentMassGramsPerEquivalent: mass, titrantMillilitres: titrant, blankMillilitres: blank }) => ({
    normality: (1000 * primaryStandardGrams) / (mass * netMillilitres({ titrant, blank, mustBeMore: true })),
  }),
  steps: ({ primaryStandardGrams, equivalentMassGramsPerEquivalent: mass, titrantMillilitres: titrant, blankMillilitres: blank }, { normality }) => [
    { says: 'standard weighed in', formula: '1000 m ÷ E', value: (1000 * primaryStandardGrams) / mass, unit: 'meq' },
    { says: 'titrant less blank', formula: 'V − V₀', value: titrant - blank, unit: 'mL' },
    { says: 'normality', formula: 'meq ÷ mL', value: normality, unit: 'eq/L' },
  ],
})
