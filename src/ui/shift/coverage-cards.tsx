import { useState } from 'preact/hooks'
import type { LabPlan } from '../../plan/lab-plan.ts'
import type { CoveredOccurrence } from '../../projections/coverage.ts'
import type { OccurrenceStatus } from '../../projections/occurrences.ts'
import type { ShiftPage } from '../../projections/shift-page.ts'
import type { EntryId } from '../../record/ids.ts'
import { useWords } from '../app-context.ts'
import { timeText } from '../format.ts'
import { Card } from '../parts/card.tsx'
import { filmText } from '../units.ts'
import { CoveragePicture, StatusMark } from './coverage-picture.tsx'
import { OccurrencesSheet } from './occurrences-sheet.tsx'

const statuses: readonly OccurrenceStatus[] = ['done', 'late', 'skipped', 'machineStopped', 'missedWithReason', 'missed', 'pending', 'overdue']

/** Each machine's shift as one picture, with what it amounts to. */
export const CoverageCards = ({ plan, page, onEvidence }: { plan: LabPlan; page: ShiftPage; onEvidence(id: EntryId): void }) => {
  const all = useWords().shift
  const words = all.coverage
  const { coverage, now, metres } = page
  const [open, setOpen] = useState<{ title: string; of: CoveredOccurrence[] }>()
  if (coverage.occurrences.length === 0) return <Card title={words.title}><p>{words.none}</p></Card>
  const settled = coverage.occurrences.length - coverage.counts.pending
  return (
    <>
      <Card title={words.title} beside={words.of(coverage.counts.done, settled)} />
      {plan.machines.map((machine) => {
        const own = coverage.occurrences.filter((it) => it.machine === machine.id)
        if (own.length === 0) return null
        const lanes = [...new Set(own.map(({ check }) => check as string))]
        const counts = statuses.map((status) => ({ status, count: own.filter((it) => it.status === status).length })).filter(({ count }) => count > 0)
        const text = counts.map(({ status, count }) => `${count} ${words.statuses[status]}`).join(', ')
        const film = metres[machine.id] ?? 0
        return (
          <Card key={machine.id} title={machine.name} beside={film > 0 ? all.film(filmText(film, plan.units.length)) : undefined}>
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
      {open ? <OccurrencesSheet title={open.title} of={open.of} plan={plan} onEvidence={onEvidence} onDone={() => setOpen(undefined)} /> : null}
    </>
  )
}
