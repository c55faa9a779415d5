import { readdirSync, readFileSync } from 'node:fs'
import * as z from 'zod/mini'

const seen = z.enum(['opened', 'memory', 'computed', 'common practice'])

const caseSchema = z.strictObject({
  id: z.string().check(z.minLength(1)),
  /** A catalogue id, or `kernel.…` for a function of `kernels.ts`. */
  calculation: z.string(),
  /** Names a group of cases that share a tolerance of their own, such as one printed table. */
  set: z.optional(z.string()),
  inputs: z.record(z.string(), z.unknown()),
  /** Some or all fields of the result, or `{"refuses": {"field": …}}`. */
  expect: z.record(z.string(), z.unknown()),
  source: z.optional(z.string()),
  seen: z.optional(seen),
  /** The reason why the product does not give the published value. The case must then really miss it. */
  disagrees: z.optional(z.string().check(z.minLength(20))),
})

const fileSchema = z.strictObject({
  about: z.string(),
  /** Author or standard, year, table. */
  source: z.string(),
  /** How the values came here: the page was open, from memory, worked out from the stated formula, shop practice. */
  seen,
  /** The script or the hand that made the file. */
  madeBy: z.string(),
  cases: z.array(caseSchema).check(z.minLength(1)),
})

export type TruthCase = Omit<z.infer<typeof caseSchema>, 'source' | 'seen'> & {
  file: string
  source: string
  seen: z.infer<typeof seen>
}

const folder = new URL('.', import.meta.url)

/** Every case of every JSON file beside this one; a file that does not parse throws with its name. */
export const truthCases = (): TruthCase[] =>
  readdirSync(folder)
    .filter((name) => name.endsWith('.json'))
    .sort()
    .flatMap((file) => {
      const parsed = fileSchema.safeParse(JSON.parse(readFileSync(new URL(file, folder), 'utf8')))
      if (!parsed.success) throw new Error(`${file}: ${z.prettifyError(parsed.error)}`)
      const { source, seen: seenFile, cases } = parsed.data
      return cases.map((it) => ({ ...it, file, source: it.source ?? source, seen: it.seen ?? seenFile }))
    })

/** `Map.groupBy`, which Node 20 lacks. */
export const groupedBy = <T>(list: readonly T[], key: (entry: T) => string): Map<string, T[]> => {
  const groups = new Map<string, T[]>()
  for (const entry of list) {
    const group = groups.get(key(entry))
    if (group) group.push(entry)
    else groups.set(key(entry), [entry])
  }
  return groups
}
