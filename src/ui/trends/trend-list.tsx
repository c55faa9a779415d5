import { useMemo } from 'preact/hooks'
import type { Check, ReadingCheck, StripCheck } from '../../plan/check.ts'
import { checksOfMachine } from '../../plan/find.ts'
import { fullName } from '../../plan/full-name.ts'
import type { LabPlan } from '../../plan/lab-plan.ts'
import { readingPlan } from '../../projections/reading-plan.ts'
import { useApp, useWords } from '../app-context.ts'
import { decimalsOf, numberText, timeText } from '../format.ts'
import { Empty } from '../parts/banner.tsx'
import { Card, Row, Rows } from '../parts/card.tsx'
import { VerdictMark } from '../parts/verdict-mark.tsx'
import { Screen } from '../screen.tsx'
import { useDates } from '../use-dates.ts'
import { comingOf } from './coming.ts'

type Charted = ReadingCheck | StripCheck

export const TrendList = ({ plan }: { plan: LabPlan }) => {
  const { lab } = useApp()
  const words = useWords().trends
  const { checks } = lab.value.state
  const isRead = (check: Check): check is Charted => check.kind !== 'look' && (checks[check.id]?.recent.length ?? 0) > 0
  const readOf = (of: LabPlan) => of.machines.flatMap((machine) => checksOfMachine(of, machine).filter(isRead).map((check) => ({ machine, check })))
  const read = readOf(plan)
  const machines = plan.machines.map((machine) => ({ machine, read: read.filter((it) => it.machine === machine).map(({ check }) => check) })).filter((it) => it.read.length > 0)
  const known = readingPlan(lab.value.state.plans, plan)
  const former = known === plan ? [] : readOf(known).filter(({ check }) => !plan.checks.some(({ id }) => id === check.id))
  return (
    <Screen title={words.title}>
      {machines.length === 0 ? <Empty title={words.empty.title}>{words.empty.more}</Empty> : null}
      <div class="columns">
        <Coming plan={plan} />
        {machines.map(({ machine, read }) => (
          <Card key={machine.id} title={machine.name}>
            <Rows>{read.map((check) => (check.kind === 'reading' ? <ReadingRow key={check.id} plan={plan} check={check} /> : <FigureRows key={check.id} check={check} />))}</Rows>
          </Card>
        ))}
        {former.length ? (
          <Card title={words.former}>
            <Rows>{former.map(({ machine, check }) => (check.kind === 'reading' ? <ReadingRow key={check.id} plan={known} check={check} of={machine.name} /> : <FigureRows key={check.id} check={check} />))}</Rows>
          </Card>
        ) : null}
      </div>
    </Screen>
  )
}

const ReadingRow = ({ plan, check, of }: { plan: LabPlan; check: ReadingCheck; of?: string }) => {
  const { lab } = useApp()
  const last = lab.value.state.checks[check.id]!.recent.at(-1)!
  return (
    <Row
      what={[of, fullName(plan, check)].filter(Boolean).join(' · ')}
      under={`${last.keyed ?? ''} ${check.unit === '1' ? '' : check.unit} · ${timeText(last.time, plan.timeZone)}`}
      value={<VerdictMark verdict={last.verdict} />}
      href={`/trends/${check.id}`}
    />
  )
}

const FigureRows = ({ check }: { check: StripCheck }) => {
  const { lab } = useApp()
  const words = useWords()
  const last = lab.value.state.strips[check.id]?.recent.at(-1)
  return (
    <>
      {check.figures.map(({ figure, step }) => {
        const found = last?.figures[figure]
        return <Row key={figure} what={`${check.name} · ${words.marks.figure(figure)}`} under={found === undefined ? undefined : numberText(found, decimalsOf(step))} href={`/trends/${check.id}/${figure}`} />
      })}
    </>
  )
}

const mostComing = 5

const Coming = ({ plan }: { plan: LabPlan }) => {
  const { lab, phone } = useApp()
  const words = useWords().trends.forecast
  const { date } = useDates(plan.timeZone)
  const coming = useMemo(() => comingOf(plan, lab.value.state, lab.value.ledger, phone.clock.now()).slice(0, mostComing), [lab.value, plan])
  if (coming.length === 0) return null
  return (
    <Card title={words.title}>
      <Rows>
        {coming.map(({ check, forecast }) => {
          const at = Math.max(forecast.at, phone.clock.now())
          return (
            <Row
              key={check.id}
              what={fullName(plan, check)}
              under={`${words.coming(forecast.meets)} ${numberText(forecast.limit, decimalsOf(check.step))} ${check.unit}, ${words.in(words.hours((at - phone.clock.now()) / 3_600_000))}`}
              value={<span class="small">{date(at)}<br />{timeText(at, plan.timeZone)}</span>}
              href={`/trends/${check.id}`}
            />
          )
        })}
      </Rows>
    </Card>
  )
}
