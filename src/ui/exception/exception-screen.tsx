import { isInPlan } from '../../projections/left-behind.ts'
import { readingPlan } from '../../projections/reading-plan.ts'
import type { EntryId } from '../../record/ids.ts'
import { useApp, useWords } from '../app-context.ts'
import { NotFound } from '../not-found.tsx'
import { ExceptionView } from './exception-view.tsx'
import { LeftBehindView } from './left-behind-view.tsx'
import { OwnDoseScreen } from './own-dose-screen.tsx'
import { RemedyScreen } from './remedy-screen.tsx'

/** `/exception/<reading>` shows how it stands; `/exception/<reading>/<remedy>` does one thing about it, `/exception/<reading>/own` something else. */
export const ExceptionScreen = () => {
  const { lab, plan, router } = useApp()
  const words = useWords()
  const [id, remedy] = router.here.value.rest
  const exception = lab.value.state.exceptions.all[id as EntryId]
  if (!exception || !plan.value) return <NotFound back why={words.exception.unknown} />
  // Taken out of the plan while it was open: nothing can be read or poured there, but it can be closed.
  if (!isInPlan(plan.value.plan, exception)) return <LeftBehindView exception={exception} plan={readingPlan(lab.value.state.plans, plan.value.plan)} />
  if (remedy === 'own') return <OwnDoseScreen exception={exception} plan={plan.value.plan} />
  return remedy ? <RemedyScreen exception={exception} plan={plan.value.plan} remedyId={remedy} /> : <ExceptionView exception={exception} plan={plan.value.plan} />
}
