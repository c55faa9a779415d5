import type { ComponentChildren } from 'preact'
import type { Check } from '../../plan/check.ts'
import type { Answering } from './answering.ts'
import type { Asked } from './asked.ts'
import type { Half } from './half.ts'

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
