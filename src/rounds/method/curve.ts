import { evaluate } from '../../science/evaluate.ts'
import { Refusal, type RefusalFacts } from '../../science/refusal.ts'
import { titrationEndPoint } from '../../science/titration/end-point.ts'

export interface CurvePoint {
  millilitres: number
  reading: number
}

export type EndPointMethod = 'secondDerivative' | 'gran'
export type EndPoint = { ok: true; millilitres: number } | { ok: false; refusal: RefusalFacts }

/** Gran's line wants to know how warm it was, for millivolts; at the bench it is near this. */
const benchCelsius = 25

/** Both end points of a curve, each with what hinders it where there is none yet. */
export const endPointsOf = (points: readonly CurvePoint[], sampleMillilitres?: number): Record<EndPointMethod, EndPoint> => {
  const by = (method: EndPointMethod): EndPoint => {
    try {
      const { result } = evaluate(titrationEndPoint, { points: [...points], method, ...(method === 'gran' ? { celsius: benchCelsius, ...(sampleMillilitres ? { sampleMillilitres } : {}) } : {}) })
      return { ok: true, millilitres: result.millilitres }
    } catch (thrown) {
      if (!(thrown instanceof Refusal)) throw thrown
      return { ok: false, refusal: thrown }
    }
  }
  return { secondDerivative: by('secondDerivative'), gran: by('gran') }
}

/** Points in the order of the titration; a volume that is keyed again replaces the one before. */
export const withPoint = (points: readonly CurvePoint[], point: CurvePoint): CurvePoint[] =>
  [...points.filter(({ millilitres }) => millilitres !== point.millilitres), point].sort((a, b) => a.millilitres - b.millilitres)

export type CurveProblem = { line: number } & ({ code: 'columns'; found: number } | { code: 'notANumber'; text: string } | { code: 'notRising'; before: number } | { code: 'outOfRange'; text: string })
export type ReadCurve = { ok: true; points: CurvePoint[] } | { ok: false; problem: CurveProblem }

/**
 * Volume and meter out of a spreadsheet or a message, a point to a line, parted by tab, semicolon, comma or blanks. A comma between figures is a decimal
 * one where something else parts the columns, so `10,50; 231` is 10.50 mL. A first line without figures is a heading.
 */
export const readCurve = (text: string): ReadCurve => {
  const points: CurvePoint[] = []
  const lines = text.replace(/^\uFEFF/, '').split(/\r\n|\n|\r/)
  for (const [index, raw] of lines.entries()) {
    const line = index + 1
    const trimmed = raw.trim()
    if (!trimmed || (points.length === 0 && !/\d/.test(trimmed))) continue
    const cells = (/[\t;]/.test(trimmed) ? trimmed.split(/[\t;]/) : /\s/.test(trimmed) ? trimmed.split(/,?\s+/) : trimmed.split(',')).map((cell) => cell.trim()).filter(Boolean)
    if (cells.length !== 2) return { ok: false, problem: { code: 'columns', found: cells.length, line } }
    const numbers: number[] = []
    for (const cell of cells) {
      const plain = cell.replaceAll('−', '-').replace(',', '.')
      if (!/^[-+]?(\d+\.?\d*|\.\d+)$/.test(plain)) return { ok: false, problem: { code: 'notANumber', text: cell, line } }
      numbers.push(Number(plain))
    }
    const [millilitres, reading] = numbers as [number, number]
    if (millilitres < 0 || millilitres > 10_000 || Math.abs(reading) > 3000) return { ok: false, problem: { code: 'outOfRange', text: trimmed, line } }
    const before = points.at(-1)
    if (before && millilitres <= before.millilitres) return { ok: false, problem: { code: 'notRising', before: before.millilitres, line } }
    points.push({ millilitres, reading })
  }
  return { ok: true, points }
}
