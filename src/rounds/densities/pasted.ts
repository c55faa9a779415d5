import { cellOf, type DensityRow } from './row.ts'

export type PastedProblem = { line: number } & ({ code: 'openQuote' } | { code: 'cells'; found: number })
export type Pasted = { ok: true; rows: DensityRow[] } | { ok: false; problem: PastedProblem }

/**
 * Densities out of a spreadsheet, a CSV file or a message: one to a line, with or without the name of its step before it, or many on one line parted by
 * spaces. Cells are parted by tab, else semicolon, else comma, else space; whichever comes first in the text parts all of it. A comma inside a number
 * is asked about and never guessed. A first line without any density is a heading.
 */
export const readPasted = (text: string, how?: { decimalComma?: boolean }): Pasted => {
  const lines = text.replace(/^\uFEFF/, '').split(/\r\n|\n|\r/)
  const separator = separatorOf(text, how?.decimalComma === true)
  const rows: DensityRow[] = []
  for (const [index, raw] of lines.entries()) {
    const line = index + 1
    if (!raw.trim()) continue
    const cells = cellsOf(raw, separator)
    if (!cells) return { ok: false, problem: { code: 'openQuote', line } }
    if (cells.length > 2 && separator !== ' ') return { ok: false, problem: { code: 'cells', found: cells.length, line } }
    // Numbers alone, side by side: each is a density.
    const alone = separator === ' ' && cells.every((cell) => /^[-−]?[\d.,]+$/.test(cell)) && (cells.length > 2 || cells.every((cell) => /[.,]/.test(cell)))
    if (alone) rows.push(...cells.map((cell) => ({ names: [], cell: cellOf(cell, how), line })))
    else rows.push({ names: cells.slice(0, -1).length ? [cells.slice(0, -1).join(' ')] : [], cell: cellOf(cells.at(-1)!, how), line })
  }
  const [first] = rows
  if (first && rows.length > 1 && first.cell.kind === 'notADensity' && !/\d/.test(first.cell.text)) rows.shift()
  return { ok: true, rows }
}

const separatorOf = (text: string, decimalComma: boolean): '\t' | ';' | ',' | ' ' => {
  if (text.includes('\t')) return '\t'
  if (text.includes(';')) return ';'
  // Without a point anywhere, a comma between figures may be a decimal one: that is asked about, not parted.
  const parts = /,/.test(text) && !decimalComma && (/\d\.\d|,\s*\.\d/.test(text) || /,\s*$/m.test(text) || !/\d,\d/.test(text))
  return parts ? ',' : ' '
}

/** The cells of a line; undefined where a quote stays open. An empty cell at the end is a cell: `3;` is a step without a density and not the density 3. */
const cellsOf = (line: string, separator: string): string[] | undefined => {
  if (separator === ' ') return line.trim().split(/\s+/)
  const cells: string[] = []
  let rest = line
  for (;;) {
    const quoted = /^\s*"((?:[^"]|"")*)"\s*/.exec(rest)
    if (!quoted && /^\s*"/.test(rest)) return undefined
    const end = quoted ? quoted[0].length : rest.indexOf(separator)
    cells.push(quoted ? quoted[1]!.replaceAll('""', '"') : (end < 0 ? rest : rest.slice(0, end)).trim())
    if (end < 0 || end >= rest.length) return cells
    if (quoted && rest[end] !== separator) return undefined
    rest = rest.slice(end + 1)
  }
}
