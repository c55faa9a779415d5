import { useEffect, useState } from 'preact/hooks'
import * as z from 'zod/mini'
import type { StripCheck } from '../../plan/check.ts'
import { useApp } from '../app-context.ts'

const draft = z.strictObject({
  /** Text keyed for each step of the plan, empty where nothing is keyed. */
  keyed: z.array(z.string()),
  stripIn: z.optional(z.number()),
  batch: z.optional(z.string()),
  from: z.optional(z.enum(['file', 'pasted'])),
  /** The entry that it became; when that is withdrawn, the densities are here again. */
  savedAs: z.optional(z.string()),
})
export type StripDraft = z.infer<typeof draft>

const keyOf = (check: StripCheck): string => `strip:${check.id}`
const fresh = (check: StripCheck): StripDraft => ({ keyed: check.steps!.map(() => '') })

/** The strip half keyed, kept at every figure: a dead battery costs the last one. Undefined until it is known. */
export const useStripDraft = (check: StripCheck): [StripDraft | undefined, (next: StripDraft) => Promise<void>] => {
  const { phone, lab } = useApp()
  const [kept, setKept] = useState<StripDraft>()
  useEffect(() => {
    void phone.drafts.get(keyOf(check)).then((found) => {
      const parsed = draft.safeParse(found)
      const it = parsed.success && parsed.data.keyed.length === check.steps!.length ? parsed.data : undefined
      if (!it?.savedAs) return setKept(it ?? fresh(check))
      const { savedAs, ...densities } = it
      return setKept(lab.value.ledger.line(savedAs as never)?.withdrawnBy ? densities : fresh(check))
    })
  }, [check.id])
  return [
    kept,
    async (next) => {
      setKept(next)
      await phone.drafts.put(keyOf(check), next)
    },
  ]
}
