import type { LabPlan } from '../../plan/lab-plan.ts'
import type { Machine } from '../../plan/machine.ts'
import { filmAtRisk } from '../../projections/film-at-risk.ts'
import { standingHolds } from '../../projections/holds.ts'
import { answerableExceptions } from '../../projections/left-behind.ts'
import { spanAt } from '../../projections/machines.ts'
import { useApp, useWords } from '../app-context.ts'
import { timeText } from '../format.ts'
import { lazy } from '../lazy.tsx'
import { Row, Rows } from '../parts/card.tsx'
import { FilmPath } from '../parts/film-path.tsx'
import { HoldIcon, Onward } from '../parts/icons.tsx'
import { MarkSign } from '../parts/mark-sign.tsx'
import { PlaceIcon } from '../parts/place-icons.tsx'
import { filmText, speedText } from '../units.ts'
import { dueText } from './due-text.ts'
import { ExceptionRow } from './exception-row.tsx'
import { onPath, pathStations } from './path-stations.ts'
import { useDue } from './use-due.ts'
import './machine-card.css'

const Nothing = () => null
/** What two readings say together comes a moment after what each says alone. Where it cannot be fetched, the rest of Now stands all the same. */
const PairRows = lazy<{ machine: Machine; plan: LabPlan }>(() => import('./pair-rows.tsx').then((it) => it.PairRows, () => Nothing), Nothing)

/** As many as help to plan the next half hour; the rest is at the stations. */
const rowsShown = 3

/** One machine at a glance: its film, what is out, what is at risk, what comes next. */
export const MachineCard = ({ machine, plan }: { machine: Machine; plan: LabPlan }) => {
  const { lab, now } = useApp()
  const words = useWords()
  const { state } = lab.value
  const due = useDue(machine)
  const span = spanAt(state.machines[machine.id], now.value)
  const holds = standingHolds(state.holds, machine.id)
  const exceptions = answerableExceptions(state, plan).filter((it) => it.machine === machine.id)
  const risk = filmAtRisk(state, plan, machine, now.value)
  const stations = pathStations(state, plan, machine, due, words)
  const next = due
    .filter(({ check }) => !exceptions.some((it) => it.check === check.id))
    .sort((a, b) => a.dueAt - b.dueAt)
  const stateName = words.marks.machine[span.state]
  return (
    <section class="card machine-card" aria-label={machine.name}>
      <a class="machine-head" href={`/machine/${machine.id}`}>
        <h2>{machine.name}</h2>
        <span class="small quiet">{span.metresPerMinute > 0 ? words.now.speed(stateName, speedText(span.metresPerMinute, plan.units.length)) : stateName}</span>
        <Onward />
      </a>
      <FilmPath
        stations={stations.filter(({ station }) => onPath(station))}
        state={holds.length ? 'held' : span.state === 'running' ? 'runs' : 'stands'}
        name={words.now.path(machine.name)}
      />
      <Beside stations={stations.filter(({ station }) => !onPath(station))} name={words.now.beside(machine.name)} />
      <Rows>
        {holds.map((hold) => (
          <Row
            key={hold.id}
            href={`/machine/${machine.id}`}
            what={<span class="held"><HoldIcon /> <strong>{words.now.held(timeText(hold.from, plan.timeZone))}</strong></span>}
            under={hold.reason}
          />
        ))}
        {exceptions.map((exception) => <ExceptionRow key={exception.id} exception={exception} plan={plan} />)}
        {risk.kind === 'inDoubt' ? (
          <Row what={<strong>{words.now.atRisk}</strong>} under={words.now.atRiskSince(timeText(risk.since, plan.timeZone))} value={<strong>{filmText(risk.metres, plan.units.length)}</strong>} />
        ) : null}
        <PairRows machine={machine} plan={plan} />
        {next.slice(0, rowsShown).map((it) => (
          <Row key={it.check.id} href={`/check/${it.check.id}`} what={it.check.name} value={<span class={`due ${it.status}`}>{dueText(it, now.value, words)}</span>} />
        ))}
        {risk.kind === 'routine' && risk.metres > 0 ? <Row what={<span class="quiet">{words.now.sinceGood}</span>} value={filmText(risk.metres, plan.units.length)} /> : null}
        {machine.reserveMetres !== undefined && span.metresPerMinute > 0 ? <Row href={`/splice/${machine.id}`} what={words.now.splice} /> : null}
        {due.length === 0 && !exceptions.length ? <Row what={<span class="quiet">{words.now.nothingDue}</span>} /> : null}
      </Rows>
    </section>
  )
}

/** Places without film, below the path. */
const Beside = ({ stations, name }: { stations: ReturnType<typeof pathStations>; name: string }) =>
  stations.length ? (
    <ul class="beside" aria-label={name}>
      {stations.map(({ station, mark, href, says }) => (
        <li key={station.id}>
          <a href={href} aria-label={says} class={mark ? 'marked' : undefined}>
            <PlaceIcon kind={station.kind} />
            {mark ? <svg class="mark-at" viewBox="0 0 24 22" aria-hidden="true" focusable="false"><MarkSign kind={mark} x={12} /></svg> : null}
            {station.short}
          </a>
        </li>
      ))}
    </ul>
  ) : null
