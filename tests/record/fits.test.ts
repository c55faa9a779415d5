import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import * as z from 'zod/mini'
import type { Draft } from '../../src/demo/draft.ts'
import { demoHistory } from '../../src/demo/history.ts'
import { demoLab } from '../../src/demo/lab.ts'
import { fitsOf } from '../../src/record/fits.ts'
import type { EntryId } from '../../src/record/ids.ts'
import { kinds, type Kind } from '../../src/record/kinds.ts'

const planEntry = '01900000-0000-7000-8000-000000000001' as EntryId
const plan = demoLab()
const drafts: readonly Draft[] = demoHistory({ seed: 3, plan, planEntry, until: Date.parse('2026-01-13T10:20:00Z'), shifts: 6 })
const looks = new Map(Object.entries(kinds).map(([kind, schema]) => [kind, fitsOf(schema)]))
const fits = (kind: Kind, data: unknown): boolean => looks.get(kind)!(data)

/** Another value in one place of it, one key more or one less. */
const spoiled = fc.gen().map((gen) => {
  const { kind, data } = structuredClone(gen(fc.constantFrom, ...drafts))
  const value: unknown = gen(fc.constantFrom, undefined, null, '', 'neg-1', 'x'.repeat(5000), 0, -1, 1.5, Number.NaN, Number.POSITIVE_INFINITY, true, [], [1], {}, { a: 1 }, planEntry, '2026-13-40T00:00:00Z')
  let at = data as Record<string, unknown>
  for (;;) {
    const keys = Object.keys(at)
    const key = gen(fc.constantFrom, ...keys, 'further')
    const inner = at[key]
    if (typeof inner === 'object' && inner !== null && gen(fc.boolean)) at = inner as Record<string, unknown>
    else {
      if (gen(fc.boolean)) at[key] = value
      else delete at[key]
      return { kind, data: data as unknown }
    }
  }
})

describe('the quick look at an entry', () => {
  it('is enough for every entry of some shifts', () => {
    expect(drafts.filter(({ kind, data }) => !fits(kind, data)).map(({ kind }) => kind)).toEqual([])
    expect(fits('plan', { plan, effectiveFrom: 0 })).toBe(true)
  })

  it('does not answer for what it does not know: formats, and schemas that change what they read', () => {
    const unknown = [z.uuid(), z.iso.datetime(), z.email(), z.string().check(z.trim()), z.string().check(z.toLowerCase()), z._default(z.string(), 'x'), z.pipe(z.string(), z.transform((it: string) => it.length))]
    for (const schema of unknown) expect(fitsOf(schema)('x'), schema._zod.def.type).toBe(false)
  })

  it('never lets through what the schema of its kind refuses', () => {
    let refused = 0
    fc.assert(
      fc.property(spoiled as fc.Arbitrary<{ kind: Kind; data: unknown }>, ({ kind, data }) => {
        const isRight = kinds[kind].safeParse(data).success
        if (!isRight) refused++
        return isRight || !fits(kind, data)
      }),
      { numRuns: 2000 },
    )
    expect(refused).toBeGreaterThan(200)
  })
})
