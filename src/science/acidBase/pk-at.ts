import type { Dissociation } from './constants.ts'

const gasConstant = 8.314462618 // J/(mol K); SI 2019
const reference = 298.15 // K

/**
 * pK of a dissociation at a temperature; celsius 0 to 60.
 *
 * ln K(T) = ln K(298) + (ΔH/R)(1/298.15 − 1/T) + (ΔCp/R)(298.15/T − 1 + ln(T/298.15))
 *
 * CRC Handbook of Chemistry and Physics, section 7 introduction (form). ΔCp is taken as constant, which over 0 to 60 °C costs
 * less than 0.01 in pK for the acids tabled; without ΔH the pK of 25 °C is kept.
 * @example pKAt({ pK: 4.757, kilojoulesPerMole: -0.41, joulesPerMoleKelvin: -142 }, 20) // 4.757
 */
export const pKAt = ({ pK, kilojoulesPerMole = 0, joulesPerMoleKelvin = 0 }: Dissociation, celsius: number): number => {
  const kelvin = celsius + 273.15
  const enthalpy = ((kilojoulesPerMole * 1000) / gasConstant) * (1 / reference - 1 / kelvin)
  const heatCapacity = (joulesPerMoleKelvin / gasConstant) * (reference / kelvin - 1 + Math.log(kelvin / reference))
  return pK - (enthalpy + heatCapacity) / Math.LN10
}
