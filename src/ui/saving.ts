import { useRef, useState } from 'preact/hooks'
import type { Photo } from '../device/photo.ts'
import type { EntryId } from '../record/ids.ts'
import type { DataOf, Kind } from '../record/kinds.ts'
import { useApp, useWords } from './app-context.ts'
import type { SavingProblem } from './words/en/saving.ts'

export interface Saving {
  /** The id once it is on the disk; undefined when it was not saved, and then `problem` says why. */
  save<K extends Kind>(kind: K, data: DataOf<K>, photos?: readonly Photo[]): Promise<EntryId | undefined>
  /** The same, after whatever is being saved: for an act that is not to be done twice because the disk is slow. */
  saveInTurn: Saving['save']
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
  /** Known at once; `busy` is known only to the next drawing. */
  const underWay = useRef<Promise<unknown> | undefined>(undefined)
  const save: Saving['save'] = async (kind, data, photos = []) => {
    if (underWay.current !== undefined) return undefined
    setBusy(true)
    setProblem(undefined)
    try {
      const saving = phone.append(kind, data, { photos })
      underWay.current = saving
      return await saving
    } catch (thrown) {
      setProblem(problemOf(thrown, words.saving.problems))
      return undefined
    } finally {
      underWay.current = undefined
      setBusy(false)
    }
  }
  return {
    busy,
    problem,
    clear: () => setProblem(undefined),
    save,
    saveInTurn: async (kind, data, photos) => {
      while (underWay.current !== undefined) await underWay.current.catch(() => undefined)
      return save(kind, data, photos)
    },
  }
}
