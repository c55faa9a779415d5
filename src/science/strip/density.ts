import { calculation } from '../calculation.ts'

export const stripDensity = calculation({
  id: 'strip.density',
  title: 'Density from transmittance',
  inputs: { transmittance: { kind: 'number', unit: '1', says: 'share of the light that passes', above: 0, atMost: 1 } },
  outputs: { density: { kind: 'number', unit: '1', says: 'transmission density' } },
  formula: 'D = −log₁₀ T',
  source: 'ISO 5, definition of transmission density',
  domain: 'More than 0 and at most 1. Which density it is (diffuse or specular, visual or colour) is that of the instrument.',
  example: { inputs: { transmittance: 0.5 }, result: { density: 0.30103 }, tolerance: 5e-6, source: 'worked by hand' },
  // Adding 0 turns the −0 of full transmittance into 0.
  run: ({ transmittance }) => ({ density: -Math.log10(transmittance) + 0 }),
  steps: ({ transmittance }, { density }) => [{ says: 'density', formula: `−log₁₀ ${transmittance}`, value: density, unit: '1' }],
})
