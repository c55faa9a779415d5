import { useState } from 'preact/hooks'
import type { MachineId } from '../../plan/ids.ts'
import type { LabPlan } from '../../plan/lab-plan.ts'
import type { CoveredOccurrence } from '../../projections/coverage.ts'
import type { Ledger } from '../../projections/ledger.ts'
import type { OccurrenceStatus } from '../../projections/occurrences.ts'
import type { ShiftPage } from '../../projections/shift-page.ts'
import type { EntryId } from '../../record/ids.ts'
import { useWords } from '../app-context.ts'
import { timeText } from '../format.ts'
import { Card } from '../parts/card.tsx'
import { filmText } from '../units.ts'
import { CoveragePicture, StatusMark } from './coverage-picture.tsx'
import { EntriesSheet } from './entries-sheet.tsx'
import { OccurrencesSheet } from './occurrences-sheet.tsx'

const statuses: readonly OccurrenceStatus[] = ['done', 'late', 'skipped', 'machineStopped', 'missedWithReason', 'missed', 'pending', 'overdue']

/** Each machine's shift as one picture, with what it amounts to. */
export const CoverageCards = ({ plan, page, ledger, onEvidence }: { plan: LabPlan; page: ShiftPage; ledger: Ledger; onEvidence(id: EntryId): void }) => {
  const all = useWords().shift
  const words = all.coverage
  const { coverage, now, metres } = page
  const [open, setOpen] = useState<{ title: string; of: CoveredOccurrence[] }>()
  const [film, setFilm] = useState<MachineId>()
  if (coverage.occurrences.length === 0) return <Card title={words.title}><p>{words.none}</p></Card>
  const settled = coverage.occurrences.length - coverage.counts.pending
  return (
    <>
      <Card title={words.title} beside={words.of(coverage.counts.done, settled)} />
      {plan.machines.map((machine) => {
        const own = coverage.occurrences.filter((it) => it.machine === machine.id)
        if (own.length === 0) return null
        // A lane for each check, in the order of the film's path; those of one station together.
        const lanes = [...new Map(own.map(({ check, station }) => [check as string, station])).entries()].map(([check, station]) => ({ check, station: machine.stations.find(({ id }) => id === station)?.short ?? station }))
        const counts = statuses.map((status) => ({ status, count: own.filter((it) => it.status === status).length })).filter(({ count }) => count > 0)
        const text = counts.map(({ status, count }) => `${count} ${words.statuses[status]}`).join(', ')
        const run = metres[machine.id] ?? 0
        return (
          <Card key={machine.id} title={machine.name} beside={run > 0 ? <button type="button" class="beside-figure" onClick={() => setFilm(machine.id)}>{all.film(filmText(run, plan.units.length))}</button> : undefined}>
            <CoveragePicture occurrences={own} lanes={lanes} from={coverage.from} to={coverage.to} now={now} name={words.picture(machine.name, text)} timeText={(time) => timeText(time, plan.timeZone)} />
            <ul class="legend small">
              {counts.map(({ status, count }) => (
                <li key={status}>
                  <button type="button" onClick={() => setOpen({ title: `${count} ${words.statuses[status]}`, of: own.filter((it) => it.status === status) })}>
                    <svg class="coverage-picture" viewBox="0 0 12 12" style={{ width: '0.75rem' }} aria-hidden="true"><StatusMark status={status} x={6} y={6} /></svg>
                    {count} {words.statuses[status]}
                  </button>
                </li>
              ))}
            </ul>
          </Card>
        )
      })}
      {film ? <EntriesSheet title={all.film(filmText(metres[film] ?? 0, plan.units.length))} plan={plan} ledger={ledger} of={runsOf(ledger, film, page)} onEvidence={onEvidence} onDone={() => setFilm(undefined)} /> : null}
      {open ? <OccurrencesSheet title={open.title} of={open.of} plan={plan} onEvidence={onEvidence} onDone={() => setOpen(undefined)} /> : null}
    </>
  )
}

/** What was said of a machine that its film follows from: from the last word before the shift on. */
const runsOf = (ledger: Ledger, machine: MachineId, { span, now }: ShiftPage): EntryId[] => {
  const said = ledger.lines.filter((line) => line.kind === 'run' && !line.withdrawnBy && line.data.machine === machine && line.time < Math.min(span.to, now + 1))
  const before = said.findLastIndex(({ time }) => time <= span.from)
  return said.slice(Math.max(0, before)).map(({ id }) => id)
}
