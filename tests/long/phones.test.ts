import { describe, expect, it } from 'vitest'
import { simulate } from '../simulate/phones.ts'

// A failure is had again by its seed alone.
const seeds = Array.from({ length: 20 }, (_, index) => 101 + index)

describe.each(seeds)('twenty phones in a bad network for long, seed %i', (seed) => {
  it('end with every entry in the record once, and all tell the same laboratory', async () => {
    const { steps, did, written, record, ...found } = await simulate({ seed, steps: 3_000 })
    console.log(`seed ${seed}: ${written} entries, ${JSON.stringify(did)}`)
    const last = `seed ${seed}, ${steps.length} steps, the last ones: ${steps.slice(-20).join('; ')}`
    expect(found, last).toEqual({ seed, lost: [], double: [], waiting: [], otherwise: [], faults: [] })
    expect(record, last).toMatchObject({ ok: true })
  })
})
