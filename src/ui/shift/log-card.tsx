import { useState } from 'preact/hooks'
import { personOf } from '../../plan/find.ts'
import type { LabPlan } from '../../plan/lab-plan.ts'
import type { LineOf } from '../../projections/line.ts'
import type { EntryId } from '../../record/ids.ts'
import type { DataOf } from '../../record/kinds.ts'
import { useWords } from '../app-context.ts'
import { timeText } from '../format.ts'
import { Button } from '../parts/button.tsx'
import { Card, Row, Rows } from '../parts/card.tsx'
import { Choices, Field } from '../parts/field.tsx'
import { Sheet } from '../parts/sheet.tsx'
import { SavingProblem } from '../saving-problem.tsx'
import { useSaving } from '../saving.ts'

type About = DataOf<'note'>['about']
const kinds: readonly About[] = ['general', 'incident', 'waste', 'maintenance', 'handover']

/** What was written in the shift, and the pen. */
export const LogCard = ({ plan, notes, open, onEvidence }: { plan: LabPlan; notes: readonly LineOf<'note'>[]; open: boolean; onEvidence(id: EntryId): void }) => {
  const words = useWords().shift.notes
  const [writing, setWriting] = useState(false)
  return (
    <Card title={words.title}>
      {notes.length === 0 ? <p>{words.none}</p> : null}
      <Rows>
        {notes.map(({ id, time, person, data }) => (
          <Row key={id} what={data.text} under={[timeText(time, plan.timeZone), words.kinds[data.about], person ? personOf(plan, person)?.name : ''].filter(Boolean).join(' · ')} onPress={() => onEvidence(id)} />
        ))}
      </Rows>
      {open ? <Button wide onPress={() => setWriting(true)}>{words.write}</Button> : null}
      {writing ? <Write onDone={() => setWriting(false)} /> : null}
    </Card>
  )
}

const Write = ({ onDone }: { onDone(): void }) => {
  const all = useWords()
  const words = all.shift.notes
  const saving = useSaving()
  const [text, setText] = useState('')
  const [about, setAbout] = useState<About>('general')
  const [tried, setTried] = useState(false)
  const save = async (): Promise<void> => {
    setTried(true)
    if (!text.trim()) return
    if (await saving.save('note', { text: text.trim(), about })) onDone()
  }
  return (
    <Sheet title={words.write} closeName={all.shell.close} onClose={onDone}>
      <SavingProblem of={saving} />
      <Field name={words.text} kind="long" value={text} onChange={setText} problem={tried && !text.trim() ? words.empty : undefined} />
      <Choices<About> name={words.about} of={kinds.map((kind) => ({ value: kind, says: words.kinds[kind] }))} value={about} onChange={setAbout} />
      <Button kind="go" notYet={saving.busy ? all.shell.loading : undefined} onPress={() => save()}>{words.save}</Button>
    </Sheet>
  )
}
