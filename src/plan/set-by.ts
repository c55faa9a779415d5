import { sameValue } from './same-value.ts'
import type { WrittenCheck, WrittenPlan } from './written-plan.ts'

/** What a reading is judged by: whoever changes it has set it. */
const judgedBy = (check: WrittenCheck): unknown => {
  switch (check.kind) {
    case 'reading':
      return [check.limits, check.holdBelow, check.holdAbove, check.pairedWithin, check.unit]
    case 'strip':
      return check.figures
    case 'look':
      return [check.right, check.wrong]
  }
}

/**
 * The plan with the name of whoever set each aim that differs from the plan before. A check whose `setBy` was itself changed keeps what it says: it
 * came so from a file, or the person has put a name to it. Starting values that nobody touched stay starting values.
 */
export const withSetBy = (before: WrittenPlan, after: WrittenPlan, by: { person: string; at: string }): WrittenPlan => {
  const known = new Map(before.checks.map((check) => [check.id, check]))
  return {
    ...after,
    checks: after.checks.map((check) => {
      const old = known.get(check.id)
      const isOurs = old !== undefined && !sameValue(judgedBy(old), judgedBy(check)) && sameValue(old.setBy, check.setBy)
      return isOurs ? { ...check, setBy: { kind: 'laboratory', ...by } } : check
    }),
  }
}
