/** What a spreadsheet would take for a formula; a number may begin with a sign. */
const isFormula = (text: string): boolean => /^[=+\-@\t\r]/.test(text) && !/^[+-]?\d+([.,]\d+)?$/.test(text)

/** A text of the program's own making, such as a signature, goes as it is. */
export type Cell = string | number | undefined | { asIs: string }

const cell = (value: Cell): string => {
  if (typeof value === 'object') return value.asIs
  const text = value === undefined ? '' : String(value)
  // Words keyed by anybody are opened by a supervisor's spreadsheet, which would run them.
  const safe = isFormula(text) ? `'${text}` : text
  return /[",\r\n]/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe
}

/**
 * Comma-separated values as RFC 4180 writes them: CRLF after each line, quotes doubled. One thing is added: a text that a spreadsheet would run
 * as a formula gets an apostrophe in front.
 *
 * @example csvText([['check', 'value'], ['pH, fixing', 4.5]]) // 'check,value\r\n"pH, fixing",4.5\r\n'
 */
export const csvText = (rows: readonly (readonly Cell[])[]): string => rows.map((row) => `${row.map(cell).join(',')}\r\n`).join('')
