import { useState } from 'preact/hooks'
import type { Photo } from '../device/photo.ts'
import type { EntryId } from '../record/ids.ts'
import type { DataOf, Kind } from '../record/kinds.ts'
import { useApp, useWords } from './app-context.ts'
import type { SavingProblem } from './words/en/saving.ts'

export interface Saving {
  /** The id once it is on the disk; undefined when it was not saved, and then `problem` says why. */
  save<K extends Kind>(kind: K, data: DataOf<K>, photos?: readonly Photo[]): Promise<EntryId | undefined>
  /** While the write is under way: a second press does nothing. */
  busy: boolean
  problem: { code: SavingProblem; detail: string } | undefined
  clear(): void
}

const problemOf = (thrown: unknown, known: object): { code: SavingProblem; detail: string } => {
  const code = thrown && typeof thrown === 'object' && 'code' in thrown ? String(thrown.code) : 'fault'
  const detail = thrown instanceof Error ? thrown.message : String(thrown)
  return { code: code in known ? (code as SavingProblem) : 'fault', detail }
}

/** One entry at a time, with what went wrong as a code for which there is a sentence. */
export const useSaving = (): Saving => {
  const { phone } = useApp()
  const words = useWords()
  const [busy, setBusy] = useState(false)
  const [problem, setProblem] = useState<Saving['problem']>()
  return {
    busy,
    problem,
    clear: () => setProblem(undefined),
    save: async (kind, data, photos = []) => {
      if (busy) return undefined
      setBusy(true)
      setProblem(undefined)
      try {
        return await phone.append(kind, data, { photos })
      } catch (thrown) {
        setProblem(problemOf(thrown, words.saving.problems))
        return undefined
      } finally {
        setBusy(false)
      }
    },
  }
}
