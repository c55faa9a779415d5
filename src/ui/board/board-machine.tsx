import { placeOf } from '../../plan/find.ts'
import type { LabPlan } from '../../plan/lab-plan.ts'
import type { Machine } from '../../plan/machine.ts'
import type { Due } from '../../projections/due.ts'
import { filmAtRisk } from '../../projections/film-at-risk.ts'
import { standingHolds } from '../../projections/holds.ts'
import { answerableExceptions } from '../../projections/left-behind.ts'
import { spanAt } from '../../projections/machines.ts'
import { useApp, useWords } from '../app-context.ts'
import { timeText } from '../format.ts'
import { dueText } from '../now/due-text.ts'
import { ExceptionRow } from '../now/exception-row.tsx'
import { onPath, pathStations } from '../now/path-stations.ts'
import { useDue } from '../now/use-due.ts'
import { Row, Rows } from '../parts/card.tsx'
import { FilmPath } from '../parts/film-path.tsx'
import { HoldIcon, Onward } from '../parts/icons.tsx'
import { MarkSign, type StationMark } from '../parts/mark-sign.tsx'
import { filmText, speedText } from '../units.ts'

const nextShown = 3

/** One machine on the board: its film path, how much of what there is, and each thing by name. */
export const BoardMachine = ({ machine, plan }: { machine: Machine; plan: LabPlan }) => {
  const { lab, now } = useApp()
  const words = useWords()
  const say = words.board
  const { state } = lab.value
  const due = useDue(machine)
  const span = spanAt(state.machines[machine.id], now.value)
  const holds = standingHolds(state.holds, machine.id)
  const exceptions = answerableExceptions(state, plan).filter((it) => it.machine === machine.id)
  const waiting = due.filter(({ check }) => !exceptions.some((it) => it.check === check.id)).sort((a, b) => a.dueAt - b.dueAt)
  const late = waiting.filter(({ status }) => status === 'late')
  const dueNow = waiting.filter(({ status }) => status === 'due')
  const ahead = waiting.filter(({ status }) => status === 'ahead').slice(0, nextShown)
  const risk = filmAtRisk(state, plan, machine, now.value)
  const stateName = words.marks.machine[span.state]
  const isQuiet = holds.length + exceptions.length + late.length + dueNow.length === 0
  return (
    <section class="card board-machine" aria-label={machine.name}>
      <a class="machine-head" href={`/machine/${machine.id}`}>
        <h2>{machine.name}</h2>
        <span class="small quiet">{span.metresPerMinute > 0 ? words.now.speed(stateName, speedText(span.metresPerMinute, plan.units.length)) : stateName}</span>
        <Onward />
      </a>
      <ul class="tallies">
        <Tally number={holds.length} says={say.tally.held}><HoldIcon /></Tally>
        <Tally number={exceptions.length} says={say.tally.out}><Sign of="act" /></Tally>
        <Tally number={late.length} says={say.tally.late}><Sign of="late" /></Tally>
        <Tally number={dueNow.length} says={say.tally.due}><Sign of="due" /></Tally>
      </ul>
      <FilmPath
        stations={pathStations(state, plan, machine, due, words).filter(({ station }) => onPath(station))}
        state={holds.length ? 'held' : span.state === 'running' ? 'runs' : 'stands'}
        name={words.now.path(machine.name)}
      />
      {isQuiet ? <p class="quiet">{say.allWell}</p> : null}
      {holds.length ? (
        <Group title={say.held}>
          {holds.map((hold) => <Row key={hold.id} href={`/machine/${machine.id}`} what={<strong>{hold.reason}</strong>} under={words.now.held(timeText(hold.from, plan.timeZone))} />)}
        </Group>
      ) : null}
      {exceptions.length ? (
        <Group title={say.out}>
          {exceptions.map((exception) => <ExceptionRow key={exception.id} exception={exception} plan={plan} />)}
          {risk.kind === 'inDoubt' ? <Row what={words.now.atRisk} under={words.now.atRiskSince(timeText(risk.since, plan.timeZone))} value={<strong>{filmText(risk.metres, plan.units.length)}</strong>} /> : null}
        </Group>
      ) : null}
      {late.length ? <Group title={say.late}>{late.map((it) => <DueRow key={it.check.id} due={it} plan={plan} />)}</Group> : null}
      {dueNow.length ? <Group title={say.due}>{dueNow.map((it) => <DueRow key={it.check.id} due={it} plan={plan} />)}</Group> : null}
      {ahead.length ? <Group title={say.next}>{ahead.map((it) => <DueRow key={it.check.id} due={it} plan={plan} />)}</Group> : null}
    </section>
  )
}

const Tally = ({ number, says, children }: { number: number; says: string; children: preact.ComponentChildren }) => (
  <li class={number ? undefined : 'none'}>
    {children}
    <strong>{number}</strong>
    <span>{says}</span>
  </li>
)

const Sign = ({ of }: { of: StationMark }) => <svg viewBox="0 0 24 22" aria-hidden="true" focusable="false"><MarkSign kind={of} x={12} /></svg>

const Group = ({ title, children }: { title: string; children: preact.ComponentChildren }) => (
  <div>
    <h3>{title}</h3>
    <Rows>{children}</Rows>
  </div>
)

const DueRow = ({ due, plan }: { due: Due; plan: LabPlan }) => {
  const { now } = useApp()
  const words = useWords()
  return (
    <Row
      href={`/check/${due.check.id}`}
      what={due.check.name}
      under={[placeOf(plan, due.check.station).station.name, due.missed ? words.board.missed(due.missed) : ''].filter(Boolean).join(' · ')}
      value={<span class={`due ${due.status}`}>{dueText(due, now.value, words)}</span>}
    />
  )
}
