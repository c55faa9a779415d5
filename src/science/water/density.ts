import { calculation } from '../calculation.ts'

/**
 * Density of air-free water at one atmosphere.
 *
 * rho = (999.83952 + 16.945176 t − 7.9870401e−3 t² − 46.170461e−6 t³ + 105.56302e−9 t⁴ − 280.54253e−12 t⁵) / (1 + 16.879850e−3 t)
 *
 * Kell 1975, J. Chem. Eng. Data 20, 97, table; t in °C on IPTS-68, 0 to 150 °C. The difference to ITS-90 is below 0.003 kg/m³
 * here, as is the difference to Tanaka et al. 2001, which ends at 40 °C. (A reprint of 1992 prints the denominator
 * as 16.897850e−3: with it the density at 25 °C is 0.32 kg/m³ low.)
 */
export const gramsPerMillilitreOfWater = (celsius: number): number => {
  const t = celsius
  const numerator =
    999.83952 + t * (16.945176 + t * (-7.9870401e-3 + t * (-46.170461e-6 + t * (105.56302e-9 - t * 280.54253e-12))))
  return numerator / (1 + 16.87985e-3 * t) / 1000
}

export const waterDensity = calculation({
  id: 'water.density',
  title: 'Density of water',
  inputs: { celsius: { kind: 'number', unit: '°C', says: 'water temperature', atLeast: 0, atMost: 100 } },
  outputs: { gramsPerMillilitre: { kind: 'number', unit: 'g/mL', says: 'density of air-free water at one atmosphere' } },
  formula: 'ρ = (999.83952 + 16.945176 t − 7.9870401·10⁻³ t² − 46.170461·10⁻⁶ t³ + 105.56302·10⁻⁹ t⁴ − 280.54253·10⁻¹² t⁵) ÷ (1 + 16.879850·10⁻³ t)',
  source: 'Kell 1975, J. Chem. Eng. Data 20, 97',
  domain: '0 to 100 °C at one atmosphere, air-free; dissolved air lowers it by at most 0.003 kg/m³.',
  example: { inputs: { celsius: 20 }, result: { gramsPerMillilitre: 0.998204 }, tolerance: 5e-7, source: 'Kell 1975, evaluated at 20 °C' },
  run: ({ celsius }) => ({ gramsPerMillilitre: gramsPerMillilitreOfWater(celsius) }),
  steps: ({ celsius }, { gramsPerMillilitre }) => [
    { says: 'temperature', value: celsius, unit: '°C' },
    { says: 'density of water at this temperature', formula: 'Kell’s polynomial', value: gramsPerMillilitre, unit: 'g/mL' },
  ],
})
