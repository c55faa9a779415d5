import type { DataOf } from '../../record/kinds.ts'
import type { CheckId } from '../../plan/ids.ts'
import { mean } from '../../science/chart/constants.ts'
import { tidy } from '../../science/decimal.ts'
import { resultOf } from '../../science/evaluate.ts'
import { stripCompare } from '../../science/strip/compare.ts'
import { stripCrossover } from '../../science/strip/crossover.ts'
import { matchSteps, type MatchProblem } from '../densities/match-steps.ts'
import { readPasted, type PastedProblem } from '../densities/pasted.ts'
import type { Densities } from './figures.ts'

type Batch = DataOf<'stripBatch'>
export type TextProblem = PastedProblem | MatchProblem

/** One strip a paragraph, with a blank line between; each laid on the steps of the plan. */
export const stripsOf = (text: string, steps: readonly string[]): { ok: true; strips: { [step: string]: number }[] } | { ok: false; problem: TextProblem } => {
  const strips: { [step: string]: number }[] = []
  let line = 0
  for (const part of text.replaceAll('\r\n', '\n').split(/\n[ \t]*\n/)) {
    const before = line
    line += part.split('\n').length + 1
    if (!part.trim()) continue
    const pasted = readPasted(part)
    const matched = pasted.ok ? matchSteps(pasted.rows, steps) : pasted
    if (!matched.ok) return { ok: false, problem: 'line' in matched.problem ? { ...matched.problem, line: matched.problem.line + before } : matched.problem }
    strips.push(Object.fromEntries(Object.entries(matched.byStep).map(([step, { value }]) => [step, value])))
  }
  return strips.length ? { ok: true, strips } : { ok: false, problem: { code: 'none' } }
}

/** A batch whose reference strip came in the box: aim = its density here + the correction printed for the batch. */
export const batchByReference = ({ check, batch, reference, correction }: { check: CheckId; batch: string; reference: Densities; correction: Densities }): Batch => {
  const { aims } = resultOf(stripCompare, { reference: { ...reference }, strip: { ...reference }, correction: { ...correction } })
  return { check, batch, aims, reference: { ...reference }, ...(Object.keys(correction).length ? { correction: { ...correction } } : {}) }
}

/** Strips of the process on aim stand for the reference: the mean of each step that all of them have. */
export const batchByMean = ({ check, batch, strips }: { check: CheckId; batch: string; strips: readonly Densities[] }): Batch => {
  const steps = Object.keys(strips[0] ?? {}).filter((step) => strips.every((strip) => strip[step] !== undefined))
  return { check, batch, aims: Object.fromEntries(steps.map((step) => [step, tidy(Number(mean(strips.map((strip) => strip[step]!)).toFixed(3)))])) }
}

/** Carried over from the batch before. Steps that were not read on three strips of each batch have no new aim. Throws a Refusal where none has. */
export const batchByCrossover = (given: { check: CheckId; batch: string; from: { batch: string; aims: Densities }; old: readonly Densities[]; fresh: readonly Densities[] }): Batch & { processRuns: Densities } => {
  const { check, batch, from, old, fresh } = given
  const isEnough = (step: string): boolean => [old, fresh].every((strips) => strips.filter((strip) => strip[step] !== undefined).length >= 3)
  const enough = Object.keys(from.aims).filter(isEnough)
  const only = (strip: Densities): { [step: string]: number } => Object.fromEntries(Object.entries(strip).filter(([step]) => enough.length === 0 || enough.includes(step)))
  const { newAims, processRuns } = resultOf(stripCrossover, { oldAims: only(from.aims), oldStrips: old.map(only), newStrips: fresh.map(only) })
  const aims = Object.fromEntries(Object.entries(newAims).map(([step, aim]) => [step, tidy(Number(aim.toFixed(3)))]))
  return { check, batch, aims, crossover: { from: from.batch, old: old.map((it) => ({ ...it })), new: fresh.map((it) => ({ ...it })) }, processRuns }
}
