import { sameValue } from './same-value.ts'
import type { WrittenPlan } from './written-plan.ts'

type WrittenMaterial = WrittenPlan['materials'][number]
/** As it is while it is edited. */
type Keyed = Partial<NonNullable<WrittenMaterial['stock']>> | undefined

/** A material as it was edited: an amount that was keyed anew was counted now, and a count that is just begun has the unit of its material. */
export const withCount = (before: WrittenMaterial | undefined, after: WrittenMaterial, at: string): WrittenMaterial => {
  const stock: Keyed = after.stock
  if (!stock) return after
  const isCountedAnew = stock.countedAt === undefined || !sameValue(before?.stock?.amount, stock.amount)
  return { ...after, stock: { ...stock, unit: stock.unit ?? (after.unit === 'mL' ? 'L' : 'kg'), ...(isCountedAnew ? { countedAt: at } : {}) } as WrittenMaterial['stock'] }
}
