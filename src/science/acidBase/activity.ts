/** `davies` as written; `daviesCapped` takes I = 0.5 in the bracket where it is higher; `ideal` sets every coefficient to 1. */
export type ActivityModel = 'daviesCapped' | 'davies' | 'ideal'

export const activityModels: readonly ActivityModel[] = ['daviesCapped', 'davies', 'ideal']

/**
 * The Debye–Hückel constant A in (kg/mol)^½ at a temperature, 0 to 60 °C: 0.509 at 25 °C, elsewhere in proportion to (ε T)^−3/2.
 * ε = 87.740 − 0.40008 t + 9.398e−4 t² − 1.410e−6 t³: Malmberg and Maryott 1956, J. Res. NBS 56, 1, equation from memory.
 * The density of water, to the power ½, is left out: under 0.5 % here.
 */
export const debyeHuckelConstant = (celsius: number): number =>
  0.509 * ((permittivity(25) * 298.15) / (permittivity(celsius) * (celsius + 273.15))) ** 1.5

const permittivity = (celsius: number): number => 87.74 + celsius * (-0.40008 + celsius * (9.398e-4 - celsius * 1.41e-6))

/** Above this ionic strength, mol/L, Davies turns up without physical reason and passes 1 near 1.9. */
const cap = 0.5

/**
 * log₁₀ of the activity coefficient of an ion, divided by the square of its charge; ionic strength I in mol/L.
 *
 * log γ = −A z² (√I / (1 + √I) − 0.3 I)
 *
 * Davies 1962, Ion Association, from memory (the form of 1938 has 0.2 I). Good to about 2 % in γ up to I = 0.1 and 10 % at 0.5.
 * Working baths stand at 1.5 to 4: there `daviesCapped` is a stopgap, chosen because it comes nearer to the pH that fresh baths are known to
 * have than the plain form does (common practice, no measured source). Anchor it with a measured pH and use it for differences.
 * @example logGammaPerChargeSquared(0.1, 'davies', 0.509) // −0.1070, γ = 0.7816 for a charge of 1
 */
export const logGammaPerChargeSquared = (ionicStrength: number, model: ActivityModel, a: number): number => {
  if (model === 'ideal') return 0
  const i = model === 'daviesCapped' ? Math.min(ionicStrength, cap) : ionicStrength
  const root = Math.sqrt(i)
  return -a * (root / (1 + root) - 0.3 * i)
}
