import { useState } from 'preact/hooks'
import type { DoseUnit } from '../../corrections/sealed-dose.ts'
import { personOf } from '../../plan/find.ts'
import type { LabPlan } from '../../plan/lab-plan.ts'
import type { ShiftIncident } from '../../projections/shift-incidents.ts'
import type { ShiftPage } from '../../projections/shift-page.ts'
import type { EntryId } from '../../record/ids.ts'
import { useApp, useWords } from '../app-context.ts'
import { shownAmount } from '../exception/amount.ts'
import { timeText } from '../format.ts'
import { Button } from '../parts/button.tsx'
import { Card, Row, Rows } from '../parts/card.tsx'
import { Field } from '../parts/field.tsx'
import { Sheet } from '../parts/sheet.tsx'
import { SavingProblem } from '../saving-problem.tsx'
import { useSaving } from '../saving.ts'
import { useDates } from '../use-dates.ts'
import type { Words } from '../words/words.ts'
import { lineText, personName } from './line-text.ts'

const incidentText = (line: ShiftIncident['line'], plan: LabPlan, all: Words): string =>
  line.kind === 'note'
    ? line.data.text
    : [
        all.exception.overPoured(lineText(line, plan, all), line.data.planned ? shownText(line.data.planned) : ''),
        ...(line.data.beyond ?? []).map((code) => all.exception.beyond[code] ?? code),
        line.data.overruled ?? '',
      ].filter(Boolean).join(' ')

const shownText = ({ amount, unit }: { amount: number; unit: DoseUnit }): string => {
  const shown = shownAmount(amount, unit)
  return `${shown.text} ${shown.unit}`
}

/** The incidents of a shift, and who took note of each with which words. */
export const IncidentsCard = ({ plan, page, onIncident }: { plan: LabPlan; page: ShiftPage; onIncident(id: EntryId): void }) => {
  const all = useWords()
  const words = all.shift.incidents
  if (page.incidents.length === 0) return null
  return (
    <Card title={words.title} beside={page.incidents.length}>
      <Rows>
        {page.incidents.map(({ line, seen }) => (
          <Row
            key={line.id}
            what={incidentText(line, plan, all)}
            under={
              <>
                {[timeText(line.time, plan.timeZone), personName(plan, line.person)].filter(Boolean).join(' · ')}
                {seen ? <><br />{words.seenBy(personName(plan, seen.person), seen.data.remark)}</> : null}
              </>
            }
            value={<span class="small">{seen ? words.seen : <strong>{words.notSeen}</strong>}</span>}
            onPress={() => onIncident(line.id)}
          />
        ))}
      </Rows>
    </Card>
  )
}

/** One incident: what happened, by whom it was written, and the acknowledgement of a supervisor. */
export const IncidentSheet = ({ plan, incident, canAcknowledge, onEvidence, onDone }: { plan: LabPlan; incident: ShiftIncident; canAcknowledge: boolean; onEvidence(id: EntryId): void; onDone(): void }) => {
  const { person } = useApp()
  const all = useWords()
  const words = all.shift.incidents
  const { line, seen } = incident
  const { when } = useDates(plan.timeZone)
  const isSupervisor = person.value !== null && personOf(plan, person.value)?.role === 'supervisor'
  return (
    <Sheet title={all.shift.notes.kinds.incident} closeName={all.shell.close} onClose={onDone}>
      <p class="said">{incidentText(line, plan, all)}</p>
      <Rows>
        <Row what={words.written} under={[personName(plan, line.person), when(line.time)].filter(Boolean).join(' · ')} onPress={() => onEvidence(line.id)} />
        {seen ? <Row what={words.seenBy(personName(plan, seen.person), seen.data.remark)} under={when(seen.time)} onPress={() => onEvidence(seen.id)} /> : null}
      </Rows>
      {seen || !canAcknowledge ? null : isSupervisor ? (
        <Acknowledge incident={incident} onDone={onDone} />
      ) : (
        <>
          <p>{words.bySupervisor}</p>
          <Button wide onPress={() => (person.value = null)}>{all.shift.blockers.handOn}</Button>
        </>
      )}
    </Sheet>
  )
}

const Acknowledge = ({ incident, onDone }: { incident: ShiftIncident; onDone(): void }) => {
  const all = useWords()
  const words = all.shift.incidents
  const saving = useSaving()
  const [remark, setRemark] = useState('')
  const [tried, setTried] = useState(false)
  const save = async (): Promise<void> => {
    setTried(true)
    if (!remark.trim()) return
    if (await saving.save('acknowledge', { of: incident.line.id, remark: remark.trim() })) onDone()
  }
  return (
    <>
      <SavingProblem of={saving} />
      <Field name={words.remark} kind="long" value={remark} onChange={setRemark} problem={tried && !remark.trim() ? words.remarkMissing : undefined} />
      <Button kind="go" notYet={saving.busy ? all.shell.loading : undefined} onPress={() => save()}>{words.save}</Button>
    </>
  )
}
