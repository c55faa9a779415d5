import { describe, expect, it } from 'vitest'
import { cards } from '../../src/safety/cards.ts'
import { knownCodes, statementsOf } from '../../src/safety/statements.ts'

/**
 * UN GHS annex 1 (labels) and annex 3 (codes): pictogram and signal word of each hazard statement, the lesser signal where a statement has
 * two categories. Read from a code table after the ninth revision (2021); H272, H420 and H304 from memory.
 */
const un: { readonly [code: string]: { pictogram: string | undefined; signal: 'Danger' | 'Warning' | undefined; either?: true } } = {
  H220: { pictogram: 'GHS02', signal: 'Danger' },
  H224: { pictogram: 'GHS02', signal: 'Danger' },
  H225: { pictogram: 'GHS02', signal: 'Danger' },
  H226: { pictogram: 'GHS02', signal: 'Warning' },
  H272: { pictogram: 'GHS03', signal: 'Warning', either: true },
  H290: { pictogram: 'GHS05', signal: 'Warning' },
  H301: { pictogram: 'GHS06', signal: 'Danger' },
  H302: { pictogram: 'GHS07', signal: 'Warning' },
  H304: { pictogram: 'GHS08', signal: 'Danger' },
  H311: { pictogram: 'GHS06', signal: 'Danger' },
  H312: { pictogram: 'GHS07', signal: 'Warning' },
  H314: { pictogram: 'GHS05', signal: 'Danger' },
  H315: { pictogram: 'GHS07', signal: 'Warning' },
  H317: { pictogram: 'GHS07', signal: 'Warning' },
  H318: { pictogram: 'GHS05', signal: 'Danger' },
  H319: { pictogram: 'GHS07', signal: 'Warning' },
  H330: { pictogram: 'GHS06', signal: 'Danger' },
  H331: { pictogram: 'GHS06', signal: 'Danger' },
  H332: { pictogram: 'GHS07', signal: 'Warning' },
  H334: { pictogram: 'GHS08', signal: 'Danger' },
  H335: { pictogram: 'GHS07', signal: 'Warning' },
  H336: { pictogram: 'GHS07', signal: 'Warning' },
  H340: { pictogram: 'GHS08', signal: 'Danger' },
  H341: { pictogram: 'GHS08', signal: 'Warning' },
  H350: { pictogram: 'GHS08', signal: 'Danger' },
  H351: { pictogram: 'GHS08', signal: 'Warning' },
  H360: { pictogram: 'GHS08', signal: 'Danger' },
  H361: { pictogram: 'GHS08', signal: 'Warning' },
  H372: { pictogram: 'GHS08', signal: 'Danger' },
  H373: { pictogram: 'GHS08', signal: 'Warning' },
  H400: { pictogram: 'GHS09', signal: 'Warning' },
  H410: { pictogram: 'GHS09', signal: 'Warning' },
  H411: { pictogram: 'GHS09', signal: undefined },
  H412: { pictogram: undefined, signal: undefined },
  H420: { pictogram: 'GHS07', signal: 'Warning' },
}

const partsOf = (codes: readonly string[]): string[] => codes.flatMap((code) => code.split('+')).map((code) => code.replace(/[A-Za-z]+$/, ''))

/** Precedence of pictograms, UN GHS 1.4.10.5.3.1: the skull replaces the exclamation mark; corrosion replaces it for skin and eyes; so does respiratory sensitisation for skin and eyes. */
const pictogramsOf = (codes: readonly string[]): string[] => {
  const parts = partsOf(codes)
  const wanted = new Set<string>()
  for (const code of parts) {
    const { pictogram } = un[code]!
    if (!pictogram) continue
    const skinOrEye = ['H315', 'H319'].includes(code)
    if (pictogram === 'GHS07' && parts.some((it) => un[it]!.pictogram === 'GHS06')) continue
    if (pictogram === 'GHS07' && skinOrEye && parts.some((it) => it === 'H314' || it === 'H318')) continue
    if (pictogram === 'GHS07' && (skinOrEye || code === 'H317') && parts.includes('H334')) continue
    wanted.add(pictogram)
  }
  return [...wanted].sort()
}

describe.each(cards.filter(({ ghs }) => ghs.h.length).map((card) => [card.id, card] as const))('the label of %s', (_, { ghs }) => {
  it('uses only statements that the UN has', () => {
    for (const code of partsOf(ghs.h)) expect(Object.keys(un), code).toContain(code)
  })
  it('carries the pictograms that its statements call for', () => {
    expect([...ghs.pictograms].sort()).toEqual(pictogramsOf(ghs.h))
  })
  it('carries the stronger of its signal words', () => {
    const rows = partsOf(ghs.h).map((code) => un[code]!)
    const strongest = rows.some(({ signal, either }) => signal === 'Danger' && !either) ? 'Danger' : 'Warning'
    const mayBe = rows.some(({ either }) => either) ? ['Danger', strongest] : [strongest]
    expect(mayBe).toContain(ghs.signal)
  })
})

describe('a code', () => {
  it('is a UN one, or said to be European', () => {
    for (const code of knownCodes) {
      const isEuropean = code.startsWith('EUH') || /^H\d{3}[A-Za-z]+$/.test(code)
      expect(statementsOf(code)[0]!.region, code).toBe(isEuropean ? 'European' : undefined)
    }
  })
  it('that is joined means what its parts mean', () => {
    expect(statementsOf('H312+H332').map(({ means }) => means)).toEqual(['Harmful through the skin.', 'Harmful if breathed in.'])
  })
  it('that nobody knows has no meaning, and is shown bare', () => {
    expect(statementsOf('H999')).toEqual([])
    expect(statementsOf('P310+P999')).toEqual([])
  })
  it('of the newer revisions stands beside the old one', () => {
    for (const code of ['P316', 'P317', 'P318', 'P319', 'P203']) expect(statementsOf(code)).toHaveLength(1)
  })
})
