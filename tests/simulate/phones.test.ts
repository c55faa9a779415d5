import { describe, expect, it } from 'vitest'
import { simulate } from './phones.ts'

// Twenty phones and a copied one, from a seed: a failure names it and its last steps. More seeds, and longer ones, are in tests/long.
describe.each([1, 2, 3])('twenty phones in a bad network, seed %i', (seed) => {
  it('end with every entry in the record once, and all tell the same laboratory', { timeout: 300_000 }, async () => {
    const { steps, did, written, record, ...found } = await simulate({ seed, steps: 1_500 })
    console.log(`seed ${seed}: ${written} entries, ${JSON.stringify(did)}`)
    const last = `seed ${seed}, ${steps.length} steps, the last ones: ${steps.slice(-20).join('; ')}`
    expect(found, last).toEqual({ seed, lost: [], double: [], waiting: [], otherwise: [], faults: [] })
    expect(record, last).toMatchObject({ ok: true })
    expect(written).toBeGreaterThan(200)
  })
})
