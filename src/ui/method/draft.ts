import { useEffect, useState } from 'preact/hooks'
import * as z from 'zod/mini'
import { useApp } from '../app-context.ts'

const determination = z.strictObject({
  keyed: z.record(z.string(), z.string()),
  points: z.array(z.strictObject({ millilitres: z.number(), reading: z.number() })),
  endPoint: z.enum(['secondDerivative', 'gran']),
})
export type KeyedDetermination = z.infer<typeof determination>

const schema = z.strictObject({
  /** Step of the method that stands; beyond the last, the figures. */
  step: z.number(),
  /** When the timer of a step was started. */
  timers: z.record(z.string(), z.number()),
  determinations: z.array(determination).check(z.minLength(1)),
})
export type MethodDraft = z.infer<typeof schema>

export const freshDetermination = (): KeyedDetermination => ({ keyed: {}, points: [], endPoint: 'secondDerivative' })
const fresh = (): MethodDraft => ({ step: 0, timers: {}, determinations: [freshDetermination()] })

/** A determination half done outlives a dead battery: kept at every figure. */
export const useMethodDraft = (check: string): [MethodDraft | undefined, (next: MethodDraft | undefined) => void] => {
  const { phone } = useApp()
  const [draft, setDraft] = useState<MethodDraft>()
  const key = `method:${check}`
  useEffect(() => {
    void phone.drafts.get(key).then((found) => {
      const parsed = schema.safeParse(found)
      setDraft(parsed.success ? parsed.data : fresh())
    })
  }, [key])
  return [
    draft,
    (next) => {
      setDraft(next ?? fresh())
      void (next ? phone.drafts.put(key, next) : phone.drafts.remove(key))
    },
  ]
}
