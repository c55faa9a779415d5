/**
 * A worked number as it is printed: so many significant figures, none of them an artefact, in plain decimals where they are short.
 * What the instrument can show is the caller's business; a worked value keeps its figures so that the working can be followed.
 */
export const workedText = (value: number, figures = 6): string => {
  if (value === 0) return '0'
  const size = Math.abs(value)
  if (size >= 1e7 || size < 1e-4) {
    const [mantissa, exponent] = value.toExponential(figures - 2).split('e') as [string, string]
    return `${Number(mantissa)}·10${[...String(Number(exponent))].map((it) => (it === '-' ? '⁻' : '⁰¹²³⁴⁵⁶⁷⁸⁹'[Number(it)])).join('')}`.replace('-', '−')
  }
  // What stands before the decimal point is never rounded away.
  return String(Number(value.toPrecision(Math.max(figures, Math.floor(Math.log10(size)) + 1)))).replace('-', '−')
}

/** `gramsPerLitre` read aloud: `grams per litre`. The symbol of a unit is no word and stays. */
export const namePlain = (name: string): string =>
  name === 'mL'
    ? name
    : name.replace(/([a-z0-9])([A-Z])/g, (_, before: string, capital: string) => `${before} ${capital.toLowerCase()}`).replace(/\bp H\b/i, 'pH').replace(/\bph\b/, 'pH')

/** What a field is called at the head of a line: the catalogue's own words, with a capital; a symbol such as `pH` keeps its own. */
export const headText = (says: string): string => (/^[a-z][a-z’]/.test(says) ? says[0]!.toUpperCase() + says.slice(1) : says)
