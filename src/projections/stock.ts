import type { Formula } from '../plan/formula.ts'
import type { LabPlan } from '../plan/lab-plan.ts'
import type { Material } from '../plan/material.ts'
import type { EntryId } from '../record/ids.ts'
import type { Ledger } from './ledger.ts'
import type { Line } from './line.ts'
import type { Plans } from './plans.ts'

/** What is left of a material by its last count: in mL or g, like its doses. */
export interface StockNow {
  counted: number
  countedAt: number
  taken: number
  /** Below nought where more was poured than was counted: then the count was wrong. */
  onHand: number
  unit: 'mL' | 'g'
  /** The adds and the steps of mixes since the count. */
  entries: EntryId[]
  /** At or below what should always be there. */
  isLow: boolean
  isExpired: boolean
  lot?: string
  expires?: string
}

const thousand = 1000

/** The stock of a material at an instant. Undefined where nobody has counted it. The ledger must reach back to the count. */
export const stockOf = (ledger: Ledger, plans: Plans, plan: LabPlan, material: Material, now: number): StockNow | undefined => {
  const { stock, unit } = material
  if (!stock) return undefined
  const countedAt = Date.parse(stock.countedAt)
  const takings = ledger.lines.slice(ledger.indexAt(countedAt)).flatMap((line) => {
    const amount = line.time <= now && !line.withdrawnBy ? takenBy(line, ledger, plans, plan, material) : undefined
    return amount === undefined ? [] : [{ id: line.id, amount }]
  })
  const counted = stock.amount * thousand
  const taken = takings.reduce((sum, { amount }) => sum + amount, 0)
  const onHand = counted - taken
  const today = Temporal.Instant.fromEpochMilliseconds(now).toZonedDateTimeISO(plan.timeZone).toPlainDate().toString()
  return {
    counted, countedAt, taken, onHand, unit, entries: takings.map(({ id }) => id),
    isLow: stock.least !== undefined && onHand <= stock.least * thousand,
    isExpired: stock.expires !== undefined && today > stock.expires,
    ...(stock.lot ? { lot: stock.lot } : {}), ...(stock.expires ? { expires: stock.expires } : {}),
  }
}

/** In the unit of the material's doses. What was poured by weight of a liquid cannot be taken off its volume; no screen offers it. */
const takenBy = (line: Line, ledger: Ledger, plans: Plans, plan: LabPlan, { id, unit }: Material): number | undefined => {
  if (line.kind === 'add') {
    if (line.data.material !== id) return undefined
    const { amount, unit: poured } = line.data.poured
    return poured === unit ? amount : (poured === 'L' && unit === 'mL') || (poured === 'kg' && unit === 'g') ? amount * thousand : undefined
  }
  if (line.kind !== 'mixStep' || line.data.unit !== unit) return undefined
  const mix = ledger.line(line.data.mix)
  if (mix?.kind !== 'mix') return undefined
  const of = plans.revisions.find((it) => it.id === mix.data.plan)?.plan ?? plan
  const step = of.formulas?.find((it) => it.id === mix.data.formula)?.steps.find(({ substance }) => substance === line.data.substance)
  return step && materialOfStep(of, step) === id ? line.data.amount : undefined
}

/** What a step of a formula is taken from: the material that it names, else the only solid on the shelf of that substance and form. */
export const materialOfStep = (plan: LabPlan, step: Formula['steps'][number]): string | undefined => {
  if (step.material) return step.material
  const solids = plan.materials.filter(({ substance, strength }) => substance === step.substance && strength.kind === 'solid' && (step.form === undefined || strength.form === step.form))
  return solids.length === 1 ? solids[0]!.id : undefined
}

/** Materials of which a batch needs more than is left, by what was counted; those that nobody counts are not spoken of. */
export const notCovered = (formula: Formula, litres: number, plan: LabPlan, stocks: ReadonlyMap<string, StockNow>): Material[] =>
  plan.materials.filter(({ id, unit }) => {
    const stock = stocks.get(id)
    if (!stock) return false
    const needed = formula.steps.filter((step) => materialOfStep(plan, step) === id).reduce((sum, step) => sum + litres * ((unit === 'mL' ? step.millilitresPerLitre : step.gramsPerLitre) ?? 0), 0)
    return needed > stock.onHand
  })
