import { useState } from 'preact/hooks'
import { planChanges } from '../../plan/changes.ts'
import { withCautionVersions } from '../../plan/caution-version.ts'
import { mergePlans } from '../../plan/merge-plans.ts'
import { sameValue } from '../../plan/same-value.ts'
import { withSetBy } from '../../plan/set-by.ts'
import { shiftAt } from '../../plan/shift-time.ts'
import { useApp, useWords } from '../app-context.ts'
import { Banner } from '../parts/banner.tsx'
import { Button } from '../parts/button.tsx'
import { Card } from '../parts/card.tsx'
import { Choices, Field } from '../parts/field.tsx'
import { SavingProblem } from '../saving-problem.tsx'
import { useSaving } from '../saving.ts'
import { useDates } from '../use-dates.ts'
import { ChangeList } from './change-list.tsx'
import { parseDraft } from './parse-draft.ts'
import { namedPath, placeOf } from './place-of.ts'
import { PlanScreen } from './plan-screen.tsx'
import { ProblemList } from './problem-list.tsx'
import { StillOpen, useStillOpen } from './still-open.tsx'
import type { Draft } from './use-draft.ts'

/** What a draft changes, what has to be mended, from when it holds and why; then it is signed as a revision. */
export const ReviewScreen = () => {
  const words = useWords().plan.review
  return <PlanScreen isReview draw={(draft) => ({ title: words.title, body: draft.changes.length ? <Review draft={draft} /> : <Nothing /> })} />
}

const Nothing = () => <Banner title={useWords().plan.draft.none} />

type Effective = 'now' | 'nextShift' | 'later'

const Review = ({ draft }: { draft: Draft }) => {
  const { plan: inForce, person, phone, now, lab, router } = useApp()
  const all = useWords()
  const words = all.plan.review
  const saving = useSaving()
  const [effective, setEffective] = useState<Effective>('now')
  const [later, setLater] = useState('')
  const [why, setWhy] = useState(draft.why)
  const [both, setBoth] = useState<readonly string[]>([])
  const zone = (inForce.value ?? draft.latest).plan.timeZone
  const { when } = useDates(zone)
  const me = person.value
  const stamped = me === null ? draft.plan : withSetBy(draft.base.plan, withCautionVersions(draft.base.plan, draft.plan), { person: me, at: new Date(phone.clock.now()).toISOString() })
  const parsed = draft.parsed.ok ? parseDraft(stamped) : draft.parsed
  const changes = planChanges(draft.base.plan, stamped)
  const stillOpen = useStillOpen(draft.plan)
  // From a later instant on it may be settled by then; where it is not, it stays to be closed under what is no longer in the plan.
  const isHeldUp = stillOpen.length > 0 && effective === 'now'
  const next = shiftAt((inForce.value ?? draft.latest).plan, shiftAt((inForce.value ?? draft.latest).plan, now.value).to)
  const from = ((): number | undefined => {
    // A revision never stands before one that was signed for later: that one would undo it.
    const earliest = Math.max(phone.clock.now(), draft.latest.from + 1)
    if (effective === 'now') return earliest
    const wanted = effective === 'nextShift' ? next.from : instantOf(later, zone)
    return wanted !== undefined && wanted >= earliest ? wanted : undefined
  })()
  const sign = async (): Promise<void> => {
    if (!parsed.ok || from === undefined || draft.isStale || isHeldUp) return
    const saved = await saving.save('plan', { plan: parsed.plan, effectiveFrom: from, ...(why.trim() ? { why: why.trim() } : {}) })
    if (!saved) return
    await draft.drop()
    router.go('/menu/plan', 'replace')
  }
  const takeIn = (): void => {
    const merged = mergePlans(draft.base.plan, draft.plan, draft.latest.plan)
    setBoth(merged.both)
    draft.rebase(merged.plan)
  }
  const latestBy = lab.value.ledger.line(draft.latest.id)?.person
  const name = (id: string | null | undefined): string => draft.plan.people.find((it) => it.id === id)?.name ?? id ?? ''
  const notYet = !parsed.ok ? words.mend : isHeldUp ? all.plan.stillOpen.title : from === undefined ? words.laterProblem : saving.busy ? all.shell.loading : undefined
  return (
    <>
      {draft.isStale ? <Banner kind="warn" title={words.stale(name(latestBy), when(draft.latest.from))}><p>{words.staleMore}</p><Button wide onPress={takeIn}>{words.takeIn}</Button></Banner> : null}
      {both.length ? <Banner kind="warn" title={words.both(both.map((path) => { const place = placeOf(draft.plan, namedPath(draft.plan, path), all); return [place.what, place.field].filter(Boolean).join(' › ') }).join('; '))} /> : null}
      {parsed.ok ? null : <Banner kind="stop" title={words.problems}><ProblemList problems={parsed.problems} plan={draft.plan} linked /></Banner>}
      <StillOpen rows={stillOpen} isRefused={isHeldUp} />
      <h2>{words.changes}</h2>
      <ChangeList before={draft.base.plan} after={stamped} changes={changes} linked />
      {draft.mayEdit ? (
        <>
          <Card title={words.effective}>
            <Choices<Effective>
              name={words.effective} value={effective} onChange={setEffective}
              of={[{ value: 'now', says: draft.latest.from > now.value ? all.plan.coming(when(draft.latest.from)) : words.now }, { value: 'nextShift', says: words.nextShift(next.shift.name, when(next.from)) }, { value: 'later', says: words.later }]}
            />
            {effective === 'now' && !sameValue([draft.base.plan.shifts, draft.base.plan.timeZone], [draft.plan.shifts, draft.plan.timeZone]) ? <Banner kind="warn" title={words.hours} /> : null}
            {effective === 'later' ? (
              <div class="field">
                <label>{words.laterField}<input type="datetime-local" value={later} onInput={(event) => setLater(event.currentTarget.value)} /></label>
              </div>
            ) : null}
            {effective !== 'now' && from === undefined && (effective === 'nextShift' || later) ? <span class="small mend">{words.laterProblem}</span> : null}
            <p class="small quiet">{words.old}</p>
          </Card>
          <Card>
            <Field name={words.why} kind="long" hint={words.whyHint} value={why} onChange={setWhy} />
            <p class="small quiet">{words.signs(name(me))}</p>
          </Card>
          <SavingProblem of={saving} />
          {draft.isStale ? null : <Button kind="go" notYet={notYet} onPress={() => sign()}>{words.sign(draft.changes.length)}</Button>}
        </>
      ) : null}
    </>
  )
}

/** A date and time by the laboratory's clock, whatever the phone's; one that the clock change skips is taken an hour later. */
const instantOf = (text: string, timeZone: string): number | undefined => {
  if (!/^\d{4}-\d\d-\d\dT\d\d:\d\d/.test(text)) return undefined
  return Temporal.PlainDateTime.from(text).toZonedDateTime(timeZone).epochMilliseconds
}
