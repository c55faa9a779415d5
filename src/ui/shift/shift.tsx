import { useMemo, useState } from 'preact/hooks'
import { checkOf, personOf, placeOf } from '../../plan/find.ts'
import type { LabPlan } from '../../plan/lab-plan.ts'
import { shiftAt, type ShiftSpan } from '../../plan/shift-time.ts'
import { coverage, type Coverage } from '../../projections/coverage.ts'
import type { Exception } from '../../projections/exceptions.ts'
import type { LineOf } from '../../projections/line.ts'
import type { OccurrenceStatus } from '../../projections/occurrences.ts'
import { useApp, useWords } from '../app-context.ts'
import { dateText, timeText } from '../format.ts'
import { Empty } from '../parts/banner.tsx'
import { Card, Row, Rows } from '../parts/card.tsx'
import { Backward, Forward } from '../parts/icons.tsx'
import { Screen } from '../screen.tsx'
import { filmText } from '../units.ts'
import { CoveragePicture, StatusMark } from './coverage-picture.tsx'
import { LogCard } from './log-card.tsx'

/** A shift on one page: what was due and done, what was out and how it closed, what was held, added and written. */
export const ShiftScreen = () => {
  const { plan, now } = useApp()
  const words = useWords()
  const [at, setAt] = useState<number>()
  const inForce = plan.value?.plan
  if (!inForce) return <Screen title={words.shift.title}><Empty title={words.now.noPlan.title}>{words.now.noPlan.more}</Empty></Screen>
  const span = shiftAt(inForce, at ?? now.value)
  return (
    <Screen title={span.shift.name} meta={`${dateText(span.from, inForce.timeZone, 'en')} · ${words.shift.span(timeText(span.from, inForce.timeZone), timeText(span.to, inForce.timeZone))}`}>
      <div class="spread">
        <button type="button" class="icon-button" aria-label={words.shift.earlier} onClick={() => setAt(span.from - 1)}><Backward /></button>
        <button type="button" class="icon-button" aria-label={words.shift.later} aria-disabled={span.to > now.value} onClick={() => (span.to > now.value ? undefined : setAt(span.to))}><Forward /></button>
      </div>
      <ShiftPage plan={inForce} span={span} />
    </Screen>
  )
}

const ShiftPage = ({ plan, span }: { plan: LabPlan; span: ShiftSpan }) => {
  const { lab, now } = useApp()
  const minute = Math.floor(now.value / 60_000)
  const covered = useMemo(() => coverage(lab.value.log, plan, span, now.value), [lab.value, plan, span.from, span.to, minute])
  const inSpan = (time: number): boolean => time >= span.from && time < span.to
  const exceptions = Object.values(lab.value.state.exceptions.all).filter((it) => it.openedAt < span.to && (it.closedAt ?? now.value) >= span.from)
  const holds = Object.values(lab.value.state.holds).filter((it) => it.from < span.to && (it.released?.at ?? now.value) >= span.from)
  const adds = lab.value.ledger.lines.filter((line): line is LineOf<'add'> => line.kind === 'add' && !line.withdrawnBy && inSpan(line.time))
  const notes = lab.value.ledger.lines.filter((line): line is LineOf<'note'> => line.kind === 'note' && !line.withdrawnBy && inSpan(line.time))
  return (
    <>
      <CoverageCards plan={plan} covered={covered} />
      <Exceptions plan={plan} exceptions={exceptions} />
      <Holds plan={plan} holds={holds} />
      <Adds plan={plan} adds={adds} />
      <LogCard plan={plan} notes={notes} open={inSpan(now.value)} />
    </>
  )
}

const statuses: readonly OccurrenceStatus[] = ['done', 'late', 'skipped', 'machineStopped', 'missedWithReason', 'missed', 'pending', 'overdue']
const mostMissed = 8

const CoverageCards = ({ plan, covered }: { plan: LabPlan; covered: Coverage }) => {
  const { now } = useApp()
  const words = useWords().shift.coverage
  const more = useWords().shift.missed
  if (covered.occurrences.length === 0) return <Card title={words.title}><p>{words.none}</p></Card>
  const settled = covered.occurrences.length - covered.counts.pending
  const missed = covered.occurrences.filter(({ status }) => status === 'missed')
  const nameOf = (check: (typeof missed)[number]['check']): string => {
    const it = checkOf(plan, check)
    return `${placeOf(plan, it.station).station.name} · ${it.name}`
  }
  return (
    <>
      {plan.machines.map((machine) => {
        const own = covered.occurrences.filter((it) => it.machine === machine.id)
        if (own.length === 0) return null
        const lanes = [...new Set(own.map(({ check }) => check as string))]
        const counts = statuses.map((status) => ({ status, count: own.filter((it) => it.status === status).length })).filter(({ count }) => count > 0)
        const text = counts.map(({ status, count }) => `${count} ${words.statuses[status]}`).join(', ')
        return (
          <Card key={machine.id} title={machine.name} beside={words.title}>
            <CoveragePicture occurrences={own} lanes={lanes} from={covered.from} to={covered.to} now={now.value} name={words.picture(machine.name, text)} timeText={(time) => timeText(time, plan.timeZone)} />
            <ul class="legend small">
              {counts.map(({ status, count }) => (
                <li key={status}>
                  <svg class="coverage-picture" viewBox="0 0 12 12" style={{ width: '0.75rem' }} aria-hidden="true"><StatusMark status={status} x={6} y={6} /></svg>
                  {count} {words.statuses[status]}
                </li>
              ))}
            </ul>
          </Card>
        )
      })}
      <Card title={words.of(covered.counts.done, settled)} />
      {missed.length ? (
        <Card title={more.title} beside={String(missed.length)}>
          <Rows>
            {missed.slice(0, mostMissed).map((it) => <Row key={`${it.check} ${it.dueAt}`} what={nameOf(it.check)} value={timeText(it.dueAt, plan.timeZone)} />)}
            {missed.length > mostMissed ? <Row what={more.more(missed.length - mostMissed)} /> : null}
          </Rows>
        </Card>
      ) : null}
    </>
  )
}

const Exceptions = ({ plan, exceptions }: { plan: LabPlan; exceptions: readonly Exception[] }) => {
  const { now } = useApp()
  const all = useWords()
  const words = all.shift.exceptions
  return (
    <Card title={words.title} beside={exceptions.length || undefined}>
      {exceptions.length === 0 ? <p>{words.none}</p> : null}
      <Rows>
        {exceptions.map((it) => {
          const check = checkOf(plan, it.check)
          const state = it.state === 'closed' ? words.closed[it.closedHow ?? 'byHand'] : words.open
          const span = words.minutes(all.time.span((it.closedAt ?? now.value) - it.openedAt))
          return (
            <Row
              key={it.id}
              what={`${placeOf(plan, it.station).station.name} · ${check.name} ${it.marks[0]?.keyed ?? ''}`}
              under={[timeText(it.openedAt, plan.timeZone), span, it.doses.length ? words.adds(it.doses.length) : ''].filter(Boolean).join(' · ')}
              value={<span class="small">{state}</span>}
              href={`/exception/${it.id}`}
            />
          )
        })}
      </Rows>
    </Card>
  )
}

const Holds = ({ plan, holds }: { plan: LabPlan; holds: readonly { id: string; machine: string; reason: string; from: number; filmAtRiskMetres?: number; released?: { at: number } }[] }) => {
  const words = useWords().shift.holds
  return (
    <Card title={words.title} beside={holds.length || undefined}>
      {holds.length === 0 ? <p>{words.none}</p> : null}
      <Rows>
        {holds.map((it) => (
          <Row
            key={it.id}
            what={`${plan.machines.find(({ id }) => id === it.machine)?.name ?? it.machine}: ${it.reason}`}
            under={[timeText(it.from, plan.timeZone), it.filmAtRiskMetres ? `${filmText(it.filmAtRiskMetres, plan.units.length)} ${words.atRisk}` : ''].filter(Boolean).join(' · ')}
            value={<span class="small">{it.released ? words.released(timeText(it.released.at, plan.timeZone)) : words.standing}</span>}
          />
        ))}
      </Rows>
    </Card>
  )
}

const Adds = ({ plan, adds }: { plan: LabPlan; adds: readonly LineOf<'add'>[] }) => {
  const words = useWords().shift.adds
  return (
    <Card title={words.title} beside={adds.length || undefined}>
      {adds.length === 0 ? <p>{words.none}</p> : null}
      <Rows>
        {adds.map(({ id, time, person, data }) => (
          <Row
            key={id}
            what={`${data.material === 'water' ? words.water : (plan.materials.find((it) => it.id === data.material)?.name ?? data.material)} · ${placeOf(plan, data.station).station.name}`}
            under={[timeText(time, plan.timeZone), person ? personOf(plan, person)?.name : '', data.lot ? words.lot(data.lot) : ''].filter(Boolean).join(' · ')}
            value={`${data.poured.keyed} ${data.poured.unit}`}
          />
        ))}
      </Rows>
    </Card>
  )
}
