import type { Check } from '../../plan/check.ts'
import type { EntryId } from '../../record/ids.ts'
import { useApp } from '../app-context.ts'
import { useAnswering } from './answering.ts'
import { askedOf } from './asked.ts'
import type { FlowProps, NextStep } from './flow.ts'
import type { Half } from './half.ts'
import { LookEntry } from './look-entry.tsx'
import { ReadingEntry } from './reading-entry.tsx'
import { StripStepsEntry } from '../strip/strip-steps-entry.tsx'
import { StripEntry } from './strip-entry.tsx'
import { VerdictScreen } from './verdict-screen.tsx'
import './check.css'

export interface CheckFlowProps {
  check: Check
  half: Half
  due: number
  meta: string
  round?: string | undefined
  onHalf(half: Half): void
  onAnswered(how: 'done' | 'skipped', id: EntryId): void
  onUndone(id: EntryId, keyed: string): void
  onNoted(): void
  next: NextStep
}

/** One check from its first sight to what follows from it. */
export const CheckFlow = ({ check, half, due, meta, round, onHalf, onAnswered, onUndone, onNoted, next }: CheckFlowProps) => {
  const { lab, phone } = useApp()
  const asked = askedOf(lab.value.state, check, phone)
  const answering = useAnswering({ half, asked, round, onAnswered, onUndone })
  if (answering.saved) return <VerdictScreen check={check} saved={answering.saved} answering={answering} meta={meta} next={next} />
  const shared: Omit<FlowProps, 'check'> = { half, asked, answering, meta, due, onHalf, onNoted }
  switch (check.kind) {
    case 'reading':
      return <ReadingEntry check={check} {...shared} />
    case 'look':
      return <LookEntry check={check} {...shared} />
    case 'strip':
      return check.steps ? <StripStepsEntry check={check} {...shared} /> : <StripEntry check={check} {...shared} />
  }
}
