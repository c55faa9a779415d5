import { useState } from 'preact/hooks'
import { checkOf } from '../../plan/find.ts'
import { fullName } from '../../plan/full-name.ts'
import type { LabPlan } from '../../plan/lab-plan.ts'
import type { Ledger } from '../../projections/ledger.ts'
import type { ShiftException } from '../../projections/shift-page.ts'
import type { EntryId } from '../../record/ids.ts'
import { useWords } from '../app-context.ts'
import { timeText } from '../format.ts'
import { materialName } from '../material-name.ts'
import { Button, LinkButton } from '../parts/button.tsx'
import { Row, Rows } from '../parts/card.tsx'
import { Field } from '../parts/field.tsx'
import { Sheet } from '../parts/sheet.tsx'
import { VerdictMark } from '../parts/verdict-mark.tsx'
import { SavingProblem } from '../saving-problem.tsx'
import { useSaving } from '../saving.ts'
import { filmText } from '../units.ts'
import { lineText, personName } from './line-text.ts'

interface Given {
  plan: LabPlan
  ledger: Ledger
  found: ShiftException
  /** A cause can still be said: the shift is not signed. */
  isOpen: boolean
  onEvidence(id: EntryId): void
  onDone(): void
}

/** One value that was out, from first sight to closure: what was read, why, what was done, and each line with the entry behind it. */
export const ExceptionSheet = ({ plan, ledger, found, isOpen, onEvidence, onDone }: Given) => {
  const all = useWords()
  const words = all.shift.exceptions
  const [isSaying, setIsSaying] = useState(false)
  const { exception: it, cause, actions, minutesOpen, filmAtRisk } = found
  const when = (time: number, person: Parameters<typeof personName>[1]): string => [timeText(time, plan.timeZone), personName(plan, person)].filter(Boolean).join(' · ')
  const told = [
    ...it.marks.map((mark, index) => ({ ...mark, what: `${index === 0 ? words.found : words.read} ${mark.keyed ?? (mark.verdict === 'IN' ? all.round.verdict.right : all.round.verdict.notRight)}`, value: <VerdictMark verdict={mark.verdict} /> })),
    ...it.doses.map((dose) => ({ ...dose, what: `${all.shift.entry.kinds.add}: ${dose.poured.amount} ${dose.poured.unit} ${materialName(plan, dose.material, all)}`, value: dose.lot ? <span class="small">{all.shift.adds.lot(dose.lot)}</span> : undefined })),
    ...actions.flatMap((id) => {
      const line = ledger.line(id)
      return line ? [{ id, time: line.time, person: line.person, what: lineText(line, plan, all), value: undefined }] : []
    }),
  ].sort((a, b) => a.time - b.time)
  return (
    <Sheet title={fullName(plan, checkOf(plan, it.check))} closeName={all.shell.close} onClose={onDone}>
      <Rows>
        {told.map(({ id, time, person, what, value }) => <Row key={id} what={what} under={when(time, person)} {...(value === undefined ? {} : { value })} onPress={() => onEvidence(id)} />)}
        {it.closedWith && it.closedHow === 'byHand' ? <Row what={words.closed.byHand} under={when(it.closedAt ?? 0, it.closedBy ?? null)} onPress={() => onEvidence(it.closedWith!)} /> : null}
        {cause ? (
          <Row what={`${words.cause}: ${cause.text}`} under={personName(plan, cause.person)} onPress={() => onEvidence(cause.id)} />
        ) : (
          <Row what={words.noCause} />
        )}
        <Row what={it.state === 'closed' ? words.closed[it.closedHow ?? 'byHand'] : words.open} value={all.time.span(minutesOpen * 60_000)} />
        {filmAtRisk.metres > 0 ? <Row what={all.now.atRisk} value={filmText(filmAtRisk.metres, plan.units.length)} /> : null}
      </Rows>
      {isSaying ? <SayCause exception={it.id} onDone={() => setIsSaying(false)} /> : isOpen ? <Button wide onPress={() => setIsSaying(true)}>{cause ? words.sayAgain : words.say}</Button> : null}
      <LinkButton wide href={`/exception/${it.id}`}>{words.toIt}</LinkButton>
    </Sheet>
  )
}

const SayCause = ({ exception, onDone }: { exception: EntryId; onDone(): void }) => {
  const all = useWords()
  const words = all.shift.exceptions
  const saving = useSaving()
  const [text, setText] = useState('')
  const [tried, setTried] = useState(false)
  const save = async (): Promise<void> => {
    setTried(true)
    if (!text.trim()) return
    if (await saving.save('note', { text: text.trim(), about: 'cause', exception })) onDone()
  }
  return (
    <>
      <SavingProblem of={saving} />
      <Field name={words.cause} hint={words.causeHint} kind="long" value={text} onChange={setText} problem={tried && !text.trim() ? words.causeMissing : undefined} />
      <Button kind="go" notYet={saving.busy ? all.shell.loading : undefined} onPress={() => save()}>{words.saveCause}</Button>
    </>
  )
}
