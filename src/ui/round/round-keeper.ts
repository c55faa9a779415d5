import { signal, type ReadonlySignal } from '@preact/signals'
import * as z from 'zod/mini'
import type { CheckId } from '../../plan/ids.ts'
import { resumeRound, type Round } from '../../rounds/kept-round.ts'
import type { Phone } from '../app-context.ts'

/** Checks of which somebody noted the value on paper, with the instant; keyed when hands and light allow. */
export type Noted = { readonly [check: CheckId]: number }

/** What is half done on this phone: the open round, half-keyed checks outside it, and what was noted on paper. Kept at every change. */
export interface RoundKeeper {
  round: ReadonlySignal<Round | undefined>
  noted: ReadonlySignal<Noted>
  setRound(round: Round | undefined): Promise<void>
  note(check: CheckId, at: number | undefined): Promise<void>
}

const roundKey = 'round'
const notedKey = 'noted'
const keptNoted = z.record(z.string(), z.number())

/** Reads what was kept; a round that no longer fits is forgotten, since everything that was read is in the log. */
export const openRoundKeeper = async (drafts: Phone['drafts']): Promise<RoundKeeper> => {
  const round = signal(resumeRound(await drafts.get(roundKey)))
  const kept = keptNoted.safeParse(await drafts.get(notedKey))
  const noted = signal<Noted>(kept.success ? (kept.data as Noted) : {})
  return {
    round,
    noted,
    setRound: async (next) => {
      round.value = next
      await (next ? drafts.put(roundKey, next) : drafts.remove(roundKey))
    },
    note: async (check, at) => {
      const { [check]: _, ...others } = noted.value
      noted.value = at === undefined ? others : { ...others, [check]: at }
      await drafts.put(notedKey, noted.value)
    },
  }
}
