import { sameValue } from './same-value.ts'
import type { WrittenPlan } from './written-plan.ts'

/** The plan with each caution that says something else than before under its next version: what was read of the last one does not count for this. */
export const withCautionVersions = (before: WrittenPlan, after: WrittenPlan): WrittenPlan =>
  after.cautions
    ? {
        ...after,
        cautions: after.cautions.map((card) => {
          const old = before.cautions?.find(({ id }) => id === card.id)
          return old && !sameValue({ ...old, version: 0 }, { ...card, version: 0 }) && card.version <= old.version ? { ...card, version: old.version + 1 } : card
        }),
      }
    : after
