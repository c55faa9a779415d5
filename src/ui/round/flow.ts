import type { ComponentChildren } from 'preact'
import type { Check } from '../../plan/check.ts'
import type { Answering } from './answering.ts'
import type { Asked } from './asked.ts'
import type { Half } from './half.ts'

/** Where one goes on; `later` is the word for it while something is still asked here. */
export interface NextStep {
  label: string
  later?: string
  go(): void
}

/** What every screen of a check is given. */
export interface FlowProps<C extends Check = Check> {
  check: C
  half: Half
  asked: Asked
  answering: Answering
  /** Where in the round one is. */
  meta: ComponentChildren
  /** When it was due, for a skip. */
  due: number
  onHalf(half: Half): void
  onNoted(): void
}
