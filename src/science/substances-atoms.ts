/** Standard atomic weights, g/mol; IUPAC abridged values 2021, from memory. */
const atomicWeights: Readonly<Record<string, number>> = {
  H: 1.008,
  B: 10.81,
  C: 12.011,
  N: 14.007,
  O: 15.999,
  Na: 22.99,
  Al: 26.982,
  P: 30.974,
  S: 32.06,
  Cl: 35.45,
  K: 39.098,
  Cr: 51.996,
  Br: 79.904,
  Ag: 107.87,
  I: 126.9,
}

/**
 * Molar mass in g/mol of a formula such as `KAl(SO4)2` or `C7H10NO3S0.5`; counts may be fractions (half a sulfate).
 * Throws on an element that is not listed: the formulas are the product's own.
 */
export const molarMassOf = (formula: string): number => {
  const open = formula.match(/\(([^()]*)\)([\d.]*)/)
  if (open) {
    const inside = molarMassOf(open[1]!) * Number(open[2] || 1)
    return inside + molarMassOf(formula.replace(open[0], ''))
  }
  let sum = 0
  for (const [, element, count] of formula.matchAll(/([A-Z][a-z]?)([\d.]*)/g)) {
    const weight = atomicWeights[element!]
    if (weight === undefined) throw new Error(`no atomic weight for ${element} in ${formula}`)
    sum += weight * Number(count || 1)
  }
  return sum
}

export const waterGramsPerMole = molarMassOf('H2O')
