import { useState } from 'preact/hooks'
import type { LabPlan } from '../../plan/lab-plan.ts'
import type { ShiftSpan } from '../../plan/shift-time.ts'
import type { Exception } from '../../projections/exceptions.ts'
import type { ShiftHandover } from '../../projections/shift-handover.ts'
import { walkedOf } from '../../projections/walk-down.ts'
import { useApp, useWords } from '../app-context.ts'
import { timeText } from '../format.ts'
import { Button } from '../parts/button.tsx'
import { Field } from '../parts/field.tsx'
import { HoldToConfirm } from '../parts/hold-to-confirm.tsx'
import { Sheet } from '../parts/sheet.tsx'
import { SavingProblem } from '../saving-problem.tsx'
import { useSaving } from '../saving.ts'
import { personName } from './line-text.ts'
import { useTicks, useWalk } from './use-walk.ts'
import { WalkList, WalkTicks } from './walk-list.tsx'

export interface HandoverGiven {
  plan: LabPlan
  span: ShiftSpan
  handover: ShiftHandover
  /** What is out of limits and goes over to the next shift. */
  open: readonly Exception[]
}

/** Given by one who leaves; then walked down and accepted by another who comes, each by their own name. */
export const HandoverSheet = ({ onDone, ...given }: HandoverGiven & { onDone(): void }) => {
  const { person } = useApp()
  const all = useWords()
  const words = all.shift.handover
  const { plan, handover } = given
  const [isAdding, setIsAdding] = useState(false)
  const told = handover.given
  if (!told || isAdding) return <Give {...given} onDone={onDone} />
  return (
    <Sheet title={words.title} closeName={all.shell.close} onClose={onDone}>
      <p class="said">{told.data.notes}</p>
      <p class="small quiet">{words.givenBy(personName(plan, told.person), timeText(told.time, plan.timeZone))}</p>
      {told.person === person.value ? (
        <>
          <p>{words.notYourself}</p>
          <Button kind="go" onPress={() => (person.value = null)}>{words.handOn}</Button>
        </>
      ) : (
        <Accept {...given} onDone={onDone} />
      )}
      <Button wide onPress={() => setIsAdding(true)}>{words.giveAgain}</Button>
    </Sheet>
  )
}

const Accept = ({ plan, span, handover, onDone }: HandoverGiven & { onDone(): void }) => {
  const { person } = useApp()
  const all = useWords()
  const words = all.shift.handover
  const saving = useSaving()
  const rows = useWalk()
  const { ticked, tick, forget } = useTicks(span)
  const left = rows.filter(({ key }) => !ticked.has(key)).length
  const save = async (): Promise<void> => {
    const open = handover.given?.data.open ?? []
    if (!(await saving.save('handover', { shift: span.shift.id, date: span.date, notes: '', open, walked: walkedOf(rows.flatMap(({ items }) => items)), side: 'accepted' }))) return
    forget()
    onDone()
  }
  return (
    <>
      <SavingProblem of={saving} />
      <h3>{words.walk}</h3>
      <p class="small quiet">{words.walkMore}</p>
      <WalkTicks rows={rows} ticked={ticked} label={words.walk} onTick={tick} />
      {left > 0 ? (
        <Button kind="go" notYet={words.leftToLook(left)} onPress={() => undefined}>{words.leftToLook(left)}</Button>
      ) : (
        <HoldToConfirm done={saving.busy} hint={all.parts.hold} onConfirm={() => void save()}>{words.acceptAs(personName(plan, person.value))}</HoldToConfirm>
      )}
    </>
  )
}

const Give = ({ span, handover, open, onDone }: HandoverGiven & { onDone(): void }) => {
  const all = useWords()
  const words = all.shift.handover
  const saving = useSaving()
  const rows = useWalk()
  const [notes, setNotes] = useState(handover.given?.data.notes ?? '')
  const [tried, setTried] = useState(false)
  const save = async (): Promise<void> => {
    setTried(true)
    if (!notes.trim()) return
    const data = { shift: span.shift.id, date: span.date, notes: notes.trim(), open: open.map(({ id }) => id), side: 'given' as const }
    if (await saving.save('handover', data)) onDone()
  }
  return (
    <Sheet title={words.give} closeName={all.shell.close} onClose={onDone}>
      <SavingProblem of={saving} />
      <Field name={words.notes} kind="long" value={notes} onChange={setNotes} problem={tried && !notes.trim() ? words.notesMissing : undefined} />
      <p class="small quiet">{open.length ? words.openCount(open.length) : words.openNone}</p>
      <h3>{words.willWalk}</h3>
      <WalkList rows={rows} label={words.willWalk} />
      <Button kind="go" notYet={saving.busy ? all.shell.loading : undefined} onPress={() => save()}>{words.save}</Button>
    </Sheet>
  )
}
