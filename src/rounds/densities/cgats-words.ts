/** Keywords of the preamble that need no announcement: CGATS.17 and ISO 28178, as public descriptions and a general-purpose library have them. */
export const preambleKeywords: ReadonlySet<string> = new Set([
  'ORIGINATOR', 'DESCRIPTOR', 'FILE_DESCRIPTOR', 'CREATED', 'MANUFACTURER', 'PROD_DATE', 'SERIAL', 'MATERIAL', 'INSTRUMENTATION', 'MEASUREMENT_SOURCE',
  'MEASUREMENT_GEOMETRY', 'PRINT_CONDITIONS', 'SAMPLE_BACKING', 'CHISQ_DOF', 'FILTER', 'POLARIZATION', 'WEIGHTING_FUNCTION', 'COMPUTATIONAL_PARAMETER',
  'TARGET_TYPE', 'COLORANT', 'TABLE_DESCRIPTOR', 'TABLE_NAME',
])

export const structureKeywords = ['KEYWORD', 'NUMBER_OF_FIELDS', 'NUMBER_OF_SETS', 'BEGIN_DATA_FORMAT', 'END_DATA_FORMAT', 'BEGIN_DATA', 'END_DATA'] as const

/** First lines that a file of this format may have. */
export const identifier = /^(CGATS(\.\d+)?|ISO ?28178)\b/i

export interface Token {
  text: string
  quoted: boolean
  line: number
}

export type CgatsProblem = { line: number } & (
  | { code: 'notCgats'; found: string }
  | { code: 'openQuote' }
  | { code: 'unknownKeyword'; keyword: string }
  | { code: 'noValue'; keyword: string }
  | { code: 'tooManyValues'; keyword: string }
  | { code: 'notACount'; keyword: string; found: string }
  | { code: 'keywordMissing'; keyword: string }
  | { code: 'fieldTwice'; field: string }
  | { code: 'fieldCount'; announced: number; found: number }
  | { code: 'setCount'; announced: number; found: number; left: number }
  | { code: 'unended'; keyword: string }
  | { code: 'noTable' }
)

export class CgatsFault extends Error {
  constructor(readonly problem: CgatsProblem) {
    super(`${problem.code} at line ${problem.line}`)
    this.name = 'CgatsFault'
  }
}

/** The words of one line: parted by space or tab, strings in " or ', the rest after # a comment. */
export const tokensOf = (text: string, line: number): Token[] => {
  const tokens: Token[] = []
  let at = 0
  while (at < text.length) {
    const sign = text[at]!
    if (sign === ' ' || sign === '\t') at++
    else if (sign === '#') break
    else if (sign === '"' || sign === "'") {
      const end = text.indexOf(sign, at + 1)
      if (end < 0) throw new CgatsFault({ code: 'openQuote', line })
      tokens.push({ text: text.slice(at + 1, end), quoted: true, line })
      at = end + 1
    } else {
      let end = at
      while (end < text.length && !/[ \t#"']/.test(text[end]!)) end++
      tokens.push({ text: text.slice(at, end), quoted: false, line })
      at = end
    }
  }
  return tokens
}
