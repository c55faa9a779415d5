import type { DensityCell, DensityRow } from './row.ts'

export type Matched =
  | { ok: true; byStep: { [step: string]: Extract<DensityCell, { kind: 'density' }> }; missing: string[]; unused: string[] }
  | { ok: false; problem: MatchProblem }

export type MatchProblem =
  | { code: 'none' }
  | { code: 'decimalComma'; line: number; text: string; as: string }
  | { code: 'notADensity'; line: number; text: string }
  | { code: 'stepTwice'; line: number; step: string }
  /** Without names, only as many densities as there are steps can be laid on them. */
  | { code: 'count'; found: number; steps: number }

const plain = (name: string): string => name.trim().toLowerCase().replace(/^(step|patch|field)\s*#?\s*/, '').replace(/^0+(?=\d)/, '')

/** Lays the rows of a text on the steps of the plan: by their names where these are known, else in order where the numbers agree. */
export const matchSteps = (rows: readonly DensityRow[], steps: readonly string[]): Matched => {
  if (rows.length === 0) return { ok: false, problem: { code: 'none' } }
  for (const { cell, line } of rows) {
    if (cell.kind === 'decimalComma') return { ok: false, problem: { code: 'decimalComma', line, text: cell.text, as: cell.as } }
    if (cell.kind === 'notADensity') return { ok: false, problem: { code: 'notADensity', line, text: cell.text } }
  }
  const known = new Map(steps.map((step) => [plain(step), step]))
  const stepOf = ({ names }: DensityRow): string | undefined => names.map((name) => known.get(plain(name))).find((step) => step !== undefined)
  const named = rows.some((row) => stepOf(row) !== undefined)
  if (!named && rows.length !== steps.length) return { ok: false, problem: { code: 'count', found: rows.length, steps: steps.length } }
  const byStep: { [step: string]: Extract<DensityCell, { kind: 'density' }> } = {}
  const unused: string[] = []
  const seen = new Set<string>()
  for (const [index, row] of rows.entries()) {
    const step = named ? stepOf(row) : steps[index]
    if (step === undefined) {
      unused.push(row.names[0] ?? String(row.line))
      continue
    }
    if (seen.has(step)) return { ok: false, problem: { code: 'stepTwice', line: row.line, step } }
    seen.add(step)
    if (row.cell.kind === 'density') byStep[step] = row.cell
  }
  return { ok: true, byStep, missing: steps.filter((step) => byStep[step] === undefined), unused }
}
