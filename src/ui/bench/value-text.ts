/**
 * A worked number as it is printed: six significant figures, none of them an artefact, in plain decimals where they are short.
 * What the instrument can show is the caller's business; a worked value keeps its figures so that the working can be followed.
 */
export const workedText = (value: number): string => {
  if (value === 0) return '0'
  const size = Math.abs(value)
  if (size >= 1e7 || size < 1e-4) {
    const [mantissa, exponent] = value.toExponential(4).split('e') as [string, string]
    return `${Number(mantissa)}·10${[...String(Number(exponent))].map((it) => (it === '-' ? '⁻' : '⁰¹²³⁴⁵⁶⁷⁸⁹'[Number(it)])).join('')}`.replace('-', '−')
  }
  return String(Number(value.toPrecision(6))).replace('-', '−')
}

/** `gramsPerLitre` read aloud: `grams per litre`. */
export const namePlain = (name: string): string =>
  name.replace(/([a-z0-9])([A-Z])/g, (_, before: string, capital: string) => `${before} ${capital.toLowerCase()}`).replace(/\bp H\b/i, 'pH').replace(/\bph\b/, 'pH')

/** What a field is called at the head of a line: the catalogue's own words, with a capital; a symbol such as `pH` keeps its own. */
export const headText = (says: string): string => (/^[a-z][a-z’]/.test(says) ? says[0]!.toUpperCase() + says.slice(1) : says)
