const faradayCoulombsPerMole = 96485.33212 // C/mol, exact since the SI of 2019
const silverGramsPerMole = 107.8682 // g/mol, IUPAC

/** Silver that one ampere plates in one hour when every electron lands on silver: Ag⁺ + e⁻ → Ag. 4.0247 g/(A·h). */
export const silverGramsPerAmpereHour = (3600 * silverGramsPerMole) / faradayCoulombsPerMole
