import { readingPlan } from '../../projections/reading-plan.ts'
import { wouldLeaveBehind } from '../../projections/would-leave-behind.ts'
import type { WrittenPlan } from '../../plan/written-plan.ts'
import { useApp, useWords } from '../app-context.ts'
import { Banner } from '../parts/banner.tsx'
import { walkRows, type WalkRow } from '../shift/walk-rows.ts'
import { WalkList } from '../shift/walk-list.tsx'

/** What is open, held, mixing or running now on something that a changed plan no longer has. */
export const useStillOpen = (changed: WrittenPlan): WalkRow[] => {
  const { lab, plan, now } = useApp()
  const words = useWords()
  const inForce = plan.value?.plan
  if (!inForce) return []
  const { log, state, ledger } = lab.value
  return walkRows(wouldLeaveBehind(log, inForce, changed, now.value), { plan: readingPlan(state.plans, inForce), state, ledger, now: now.value, words })
}

/** Named, each with the way to settle it. `isRefused`: it keeps the plan from being signed as it is asked for. */
export const StillOpen = ({ rows, isRefused }: { rows: readonly WalkRow[]; isRefused: boolean }) => {
  const words = useWords().plan.stillOpen
  if (!rows.length) return null
  return (
    <Banner kind={isRefused ? 'stop' : 'warn'} title={words.title}>
      <p>{isRefused ? words.refused : words.byThen}</p>
      <WalkList rows={rows} label={words.title} />
    </Banner>
  )
}
