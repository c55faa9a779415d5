import { sameValue } from '../../plan/same-value.ts'
import { withSetBy } from '../../plan/set-by.ts'
import type { WrittenCheck } from '../../plan/written-plan.ts'
import { useApp, useWords } from '../app-context.ts'
import { Banner } from '../parts/banner.tsx'
import { Button } from '../parts/button.tsx'
import { useDates } from '../use-dates.ts'
import { withValue, type Path } from './at.ts'
import { setByText } from './set-by-text.ts'
import type { Draft } from './use-draft.ts'

/** Who set the aim of a check, and when. A starting value may be taken over as it stands. */
export const SetByCard = ({ draft, check, path }: { draft: Draft; check: WrittenCheck; path: Path }) => {
  const { person, phone } = useApp()
  const words = useWords()
  const { date } = useDates()
  const { plan, base, mayEdit, change } = draft
  const me = person.value
  const old = base.plan.checks.find(({ id }) => id === check.id)
  const by = { person: me ?? '', at: new Date(phone.clock.now()).toISOString() }
  const willBe = old !== undefined && !sameValue(withSetBy(base.plan, { ...plan, checks: [check] }, by).checks[0]!.setBy, check.setBy)
  if (willBe) return <Banner title={words.plan.willBeSet}><span class="small quiet">{setByText(plan, check, words, date)}</span></Banner>
  if (check.setBy.kind === 'laboratory') return <p class="small quiet">{setByText(plan, check, words, date)}</p>
  return (
    <Banner kind="warn" title={setByText(plan, check, words, date)}>
      {mayEdit && me !== null ? <Button onPress={() => change(withValue(plan, [...path, 'setBy'], { kind: 'laboratory', ...by }))}>{words.plan.takeAsOurs}</Button> : null}
    </Banner>
  )
}
