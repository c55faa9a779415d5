import { useState } from 'preact/hooks'
import type { Check } from '../../plan/check.ts'
import { useApp, useWords } from '../app-context.ts'
import { timeText } from '../format.ts'
import { Button } from '../parts/button.tsx'
import { NotedSheet } from './noted-sheet.tsx'
import { SkipSheet } from './skip-sheet.tsx'
import type { Answering } from './answering.ts'

/** The honest ways round a number: not done and why, or noted on paper and keyed later. */
export const EntryTools = ({ check, due, answering, onNoted }: { check: Check; due: number; answering: Answering; onNoted(): void }) => {
  const { rounds, plan } = useApp()
  const words = useWords()
  const [open, setOpen] = useState<'skip' | 'noted'>()
  const noted = rounds.noted.value[check.id]
  return (
    <div class="entry-tools">
      <Button onPress={() => setOpen('skip')}>{words.round.check.notDone}</Button>
      <Button onPress={() => setOpen('noted')}>{noted === undefined ? words.round.check.note : words.round.check.noted(timeText(noted, plan.value!.plan.timeZone))}</Button>
      {open === 'skip' ? <SkipSheet onClose={() => setOpen(undefined)} onSkip={(reason, remark) => void answering.skip(check, due, reason, remark)} answering={answering} /> : null}
      {open === 'noted' ? <NotedSheet check={check} onClose={() => setOpen(undefined)} onLater={onNoted} /> : null}
    </div>
  )
}
