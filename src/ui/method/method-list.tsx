import type { ReadingCheck } from '../../plan/check.ts'
import { placeOf } from '../../plan/find.ts'
import type { LabPlan } from '../../plan/lab-plan.ts'
import { dueChecks } from '../../projections/due.ts'
import { useApp, useWords } from '../app-context.ts'
import { Empty } from '../parts/banner.tsx'
import { Card, Row, Rows } from '../parts/card.tsx'
import { VerdictMark } from '../parts/verdict-mark.tsx'
import { Screen } from '../screen.tsx'
import { useDates } from '../use-dates.ts'

/** Every check that is worked at the bench: what is due first, then the baths, then titrants and instruments. */
export const MethodList = ({ plan }: { plan: LabPlan }) => {
  const { lab, phone } = useApp()
  const words = useWords().method
  const checks = plan.checks.filter((it): it is ReadingCheck => it.kind === 'reading' && plan.methods.some(({ id }) => id === it.method))
  const due = new Set(dueChecks(lab.value.state, plan, phone.clock.now()).filter(({ dueAt }) => dueAt <= phone.clock.now()).map(({ check }) => check.id))
  const isInstrument = (check: ReadingCheck): boolean => placeOf(plan, check.station).station.kind === 'instruments'
  const groups = [
    [words.due, checks.filter(({ id }) => due.has(id))],
    [words.atBench, checks.filter((it) => !due.has(it.id) && !isInstrument(it))],
    [words.instruments, checks.filter((it) => !due.has(it.id) && isInstrument(it))],
  ] as const
  return (
    <Screen title={words.title} back>
      {checks.length === 0 ? <Empty title={words.none.title}>{words.none.more}</Empty> : null}
      <div class="columns">
        {groups.map(([title, list]) =>
          list.length ? (
            <Card key={title} title={title}>
              <Rows>{list.map((check) => <MethodRow key={check.id} plan={plan} check={check} />)}</Rows>
            </Card>
          ) : null,
        )}
      </div>
    </Screen>
  )
}

const MethodRow = ({ plan, check }: { plan: LabPlan; check: ReadingCheck }) => {
  const { lab } = useApp()
  const words = useWords().method
  const { when } = useDates(plan.timeZone)
  const { station, machine } = placeOf(plan, check.station)
  const last = lab.value.state.checks[check.id]?.recent.at(-1)
  const place = station.kind === 'instruments' ? '' : `${machine.name} · ${station.name} · `
  return (
    <Row
      what={`${check.name}`}
      under={`${place}${last ? words.last(`${last.keyed ?? ''} ${check.unit}`, when(last.time)) : words.never}`}
      value={last ? <VerdictMark verdict={last.verdict} /> : undefined}
      href={`/method/${check.id}`}
    />
  )
}
