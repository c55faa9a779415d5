import type { Check, ReadingCheck, StripCheck } from '../../plan/check.ts'
import { readingPlan } from '../../projections/reading-plan.ts'
import { useApp, useWords } from '../app-context.ts'
import { Empty } from '../parts/banner.tsx'
import { Screen } from '../screen.tsx'
import { TrendList } from './trend-list.tsx'
import { TrendScreen } from './trend-screen.tsx'

/** A control chart for every check that is a number and every figure of a strip: `/trends/<check>`, `/trends/<check>/<figure>`. */
export const Trends = () => {
  const { router, plan, lab } = useApp()
  const words = useWords()
  const [id, figure] = router.here.value.rest
  const inForce = plan.value?.plan
  if (!inForce) return <Screen title={words.trends.title}><Empty title={words.now.noPlan.title}>{words.now.noPlan.more}</Empty></Screen>
  if (!id) return <TrendList plan={inForce} />
  // A check that is no longer in the plan keeps its chart.
  const known = readingPlan(lab.value.state.plans, inForce)
  const check = known.checks.find((it): it is ReadingCheck | StripCheck => it.id === id && isCharted(it, figure))
  return check ? <TrendScreen plan={known} check={check} figure={check.kind === 'strip' ? figure : undefined} /> : <Screen title={words.trends.noCheck.title} back><p>{words.trends.noCheck.more}</p></Screen>
}

const isCharted = (check: Check, figure: string | undefined): boolean => check.kind === 'reading' || (check.kind === 'strip' && check.figures.some((it) => it.figure === figure))
