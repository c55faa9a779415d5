import { useState } from 'preact/hooks'
import type { Check } from '../../plan/check.ts'
import { useApp, useWords } from '../app-context.ts'
import { timeText } from '../format.ts'
import { CheckLabel } from '../labels/check-label.tsx'
import { Button } from '../parts/button.tsx'
import { SentIcon } from '../parts/icons.tsx'
import { NotedSheet } from './noted-sheet.tsx'
import { SkipSheet } from './skip-sheet.tsx'
import type { Answering } from './answering.ts'
import type { Half } from './half.ts'

interface EntryToolsProps {
  check: Check
  due: number
  answering: Answering
  half: Half
  onHalf(half: Half): void
  onNoted(): void
}

/** The honest ways round a number: not done and why, or noted on paper and keyed later; and the proof that one stands there. */
export const EntryTools = ({ check, due, answering, half, onHalf, onNoted }: EntryToolsProps) => {
  const { rounds, plan } = useApp()
  const words = useWords()
  const [open, setOpen] = useState<'skip' | 'noted' | 'label'>()
  const noted = rounds.noted.value[check.id]
  return (
    <div class="entry-tools">
      <Button onPress={() => setOpen('skip')}>{words.round.check.notDone}</Button>
      <Button onPress={() => setOpen('noted')}>{noted === undefined ? words.round.check.note : words.round.check.noted(timeText(noted, plan.value!.plan.timeZone))}</Button>
      <Button onPress={() => setOpen('label')}>{half.atTank ? <><SentIcon /> {words.labels.here}</> : words.labels.scan}</Button>
      {open === 'label' ? <CheckLabel check={check} onHere={() => { setOpen(undefined); onHalf({ ...half, atTank: true }) }} onClose={() => setOpen(undefined)} /> : null}
      {open === 'skip' ? <SkipSheet check={check} onClose={() => setOpen(undefined)} onSkip={(reason, remark) => void answering.skip(check, due, reason, remark)} answering={answering} /> : null}
      {open === 'noted' ? <NotedSheet check={check} onClose={() => setOpen(undefined)} onLater={onNoted} /> : null}
    </div>
  )
}
