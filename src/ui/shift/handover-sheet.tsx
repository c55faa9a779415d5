import { useState } from 'preact/hooks'
import { checkOf, placeOf } from '../../plan/find.ts'
import type { LabPlan } from '../../plan/lab-plan.ts'
import type { Exception } from '../../projections/exceptions.ts'
import type { ShiftPage } from '../../projections/shift-page.ts'
import { useApp, useWords } from '../app-context.ts'
import { dateText, timeText } from '../format.ts'
import { Button } from '../parts/button.tsx'
import { Card, Row, Rows } from '../parts/card.tsx'
import { Field } from '../parts/field.tsx'
import { HoldToConfirm } from '../parts/hold-to-confirm.tsx'
import { Sheet } from '../parts/sheet.tsx'
import { SavingProblem } from '../saving-problem.tsx'
import { useSaving } from '../saving.ts'
import { personName } from './line-text.ts'

interface Given {
  plan: LabPlan
  page: ShiftPage
}

const exceptionText = (plan: LabPlan, it: Exception): string => `${placeOf(plan, it.station).station.name} · ${checkOf(plan, it.check).name} ${it.marks.at(-1)?.keyed ?? ''}`.trim()

/** Who gave the shift over and who took it, with what stays open. */
export const HandoverCard = ({ plan, page, isClosed }: Given & { isClosed: boolean }) => {
  const words = useWords().shift.handover
  const [isOpen, setIsOpen] = useState(false)
  const { given, accepted } = page.handover
  const when = (time: number): string => `${dateText(time, plan.timeZone, 'en')} ${timeText(time, plan.timeZone)}`
  return (
    <Card title={words.title}>
      {given ? (
        <>
          {given.data.notes ? <p class="said">{given.data.notes}</p> : null}
          {given.data.open.length ? (
            <Rows label={words.open}>
              {given.data.open.map((id) => {
                const it = page.exceptions.find(({ exception }) => exception.id === id)?.exception
                return it ? <Row key={id} what={exceptionText(plan, it)} under={words.open} href={`/exception/${id}`} /> : null
              })}
            </Rows>
          ) : null}
          <p class="small quiet">{words.givenBy(personName(plan, given.person), when(given.time))}</p>
          <p class="small quiet">{accepted ? words.acceptedBy(personName(plan, accepted.person), when(accepted.time)) : words.notAccepted}</p>
        </>
      ) : (
        <p>{words.none}</p>
      )}
      {isClosed || accepted ? null : <Button wide onPress={() => setIsOpen(true)}>{given ? words.title : words.give}</Button>}
      {isOpen ? <HandoverSheet plan={plan} page={page} onDone={() => setIsOpen(false)} /> : null}
    </Card>
  )
}

/** Given by one who leaves, then accepted by another who comes, each by their own name. */
export const HandoverSheet = ({ plan, page, onDone }: Given & { onDone(): void }) => {
  const { person } = useApp()
  const all = useWords()
  const words = all.shift.handover
  const { given } = page.handover
  const [isAdding, setIsAdding] = useState(false)
  if (!given || isAdding) return <Give plan={plan} page={page} onDone={onDone} />
  return (
    <Sheet title={words.title} closeName={all.shell.close} onClose={onDone}>
      <p class="said">{given.data.notes}</p>
      <p class="small quiet">{words.givenBy(personName(plan, given.person), timeText(given.time, plan.timeZone))}</p>
      {given.person === person.value ? (
        <>
          <p>{words.notYourself}</p>
          <Button kind="go" onPress={() => (person.value = null)}>{words.handOn}</Button>
        </>
      ) : (
        <Accept plan={plan} page={page} onDone={onDone} />
      )}
      <Button wide onPress={() => setIsAdding(true)}>{words.giveAgain}</Button>
    </Sheet>
  )
}

const Accept = ({ plan, page, onDone }: Given & { onDone(): void }) => {
  const { person } = useApp()
  const all = useWords()
  const saving = useSaving()
  const { span, handover } = page
  const save = async (): Promise<void> => {
    const open = handover.given?.data.open ?? []
    if (await saving.save('handover', { shift: span.shift.id, date: span.date, notes: '', open, side: 'accepted' })) onDone()
  }
  return (
    <>
      <SavingProblem of={saving} />
      <HoldToConfirm done={saving.busy} hint={all.parts.hold} onConfirm={() => void save()}>{all.shift.handover.acceptAs(personName(plan, person.value))}</HoldToConfirm>
    </>
  )
}

const Give = ({ plan, page, onDone }: Given & { onDone(): void }) => {
  const all = useWords()
  const words = all.shift.handover
  const saving = useSaving()
  const [notes, setNotes] = useState(page.handover.given?.data.notes ?? '')
  const [tried, setTried] = useState(false)
  const open = page.exceptions.filter((it) => it.isOpen).map(({ exception }) => exception)
  const save = async (): Promise<void> => {
    setTried(true)
    if (!notes.trim()) return
    const data = { shift: page.span.shift.id, date: page.span.date, notes: notes.trim(), open: open.map(({ id }) => id), side: 'given' as const }
    if (await saving.save('handover', data)) onDone()
  }
  return (
    <Sheet title={words.give} closeName={all.shell.close} onClose={onDone}>
      <SavingProblem of={saving} />
      <Field name={words.notes} kind="long" value={notes} onChange={setNotes} problem={tried && !notes.trim() ? words.notesMissing : undefined} />
      {open.length ? <Rows label={words.open}>{open.map((it) => <Row key={it.id} what={exceptionText(plan, it)} under={words.open} />)}</Rows> : <p class="quiet">{words.openNone}</p>}
      <Button kind="go" notYet={saving.busy ? all.shell.loading : undefined} onPress={() => void save()}>{words.save}</Button>
    </Sheet>
  )
}
