import { describe, expect, it } from 'vitest'
import { cautionsBefore } from '../../src/safety/bench-amounts.ts'
import { catalogue } from '../../src/science/catalogue.ts'

describe('an amount worked out at the bench', () => {
  it('of a hazardous reagent comes after its caution: acetic acid, hydroxide', () => {
    const acid = cautionsBefore('acidBase.dose', { reagent: { substance: 'aceticAcid', percentByMass: 28 }, bath: [{ substance: 'metol' }] })
    expect(acid.cards.map(({ id }) => id)).toEqual(expect.arrayContaining(['acetic-acid-28', 'acetic-acid-glacial']))
    expect(acid.cards.some(({ substances }) => substances.includes('metol'))).toBe(false)
    expect(cautionsBefore('acidBase.dose', { reagent: { substance: 'sodiumHydroxide' } }).needed[0]!.card).toBe('sodium-hydroxide')
  })

  it('of a formula asks for the corrosive first, and never for more than two holds', () => {
    const { cards, needed } = cautionsBefore('mix.batch', { formula: { steps: ['metol', 'sodiumSulfite', 'hydroquinone', 'sodiumHydroxide'].map((substance) => ({ substance })) } })
    expect(cards.length).toBeGreaterThan(2)
    expect(needed.flatMap(({ lines }) => lines)).toHaveLength(2)
    expect(needed.map(({ card }) => card)).toContain('sodium-hydroxide')
  })

  it('of every worked example is either harmless or has its card, and what pours nothing asks for nothing', () => {
    for (const { id, example } of catalogue) {
      const { cards, needed } = cautionsBefore(id, example.inputs as Record<string, unknown>)
      if (id === 'acidBase.dose') expect(cards.length).toBeGreaterThan(0)
      if (!['acidBase.dose', 'mix.batch', 'mix.hydrate', 'bath.correct'].includes(id)) expect(needed).toEqual([])
    }
  })
})
