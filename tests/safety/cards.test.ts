import { describe, expect, it } from 'vitest'
import { demoLab } from '../../src/demo/lab.ts'
import { linesOf, lineOf } from '../../src/safety/card.ts'
import { cardById, cards } from '../../src/safety/cards.ts'
import { cardsNeeded } from '../../src/safety/needed.ts'
import { statementsOf } from '../../src/safety/statements.ts'

describe.each(cards.map((card) => [card.id, card] as const))('the caution %s', (_, card) => {
  it('says what it is, what to do and where that comes from', () => {
    for (const text of [card.name, card.use, card.source]) expect(text.length).toBeGreaterThan(3)
    expect(card.never.length).toBeGreaterThan(0)
    expect(card.firstAid.length).toBeGreaterThan(0)
    expect(card.wear.length).toBeGreaterThan(0)
    for (const line of linesOf(card)) expect(line.says, line.key).toMatch(/^[A-Z0-9].*[.]$/s)
  })

  it('names each line once and holds one or two of its own lines', () => {
    const keys = linesOf(card).map(({ key }) => key)
    expect(keys).toEqual([...new Set(keys)])
    expect(card.deadliest.length).toBeLessThanOrEqual(2)
    for (const key of card.deadliest) expect(lineOf(card, key).says).not.toBe('')
  })

  it('knows the meaning of every code it shows, European supplements apart', () => {
    for (const code of [...card.ghs.h, ...card.ghs.p]) {
      expect(statementsOf(code).length, code).toBeGreaterThan(0)
      expect(code.startsWith('EUH'), code).toBe(false)
    }
    for (const code of card.ghs.regional) expect(statementsOf(code)[0]?.region, code).toBe('European')
  })

  it('hides the amount of whatever a label calls a hazard', () => {
    if (card.ghs.h.length || card.ghs.regional.length || card.banned) expect(card.gated).toBe(true)
  })
})

describe('the cards together', () => {
  it('are each named once', () => {
    expect(cards.map(({ id }) => id)).toEqual([...new Set(cards.map(({ id }) => id))])
  })

  it('cover what a black-and-white laboratory meets', () => {
    const wanted = [
      'acetic-acid-glacial', 'acetic-acid-28', 'sulfuric-acid', 'potassium-alum', 'chrome-alum', 'sodium-sulfite', 'sodium-metabisulfite', 'sulfur-dioxide',
      'sodium-thiosulfate', 'ammonium-thiosulfate', 'hydroquinone', 'metol', 'sodium-hydroxide', 'sodium-carbonate', 'borax', 'boric-acid',
      'potassium-bromide', 'iodine', 'silver-nitrate', 'sodium-sulfide', 'hydrogen-sulfide', 'diethyl-ether', 'ethyl-acetate', 'tetrachloroethylene',
      'carbon-tetrachloride', 'trichloroethane-111', 'isopropanol', 'hydrofluoroether', 'formaldehyde', 'ammonia-solution', 'sodium-hypochlorite',
      'potassium-ferricyanide', 'potassium-dichromate', 'potassium-permanganate', 'mercury-thermometer', 'op-acid-dose', 'op-powder-developer',
      'op-silver-cell', 'op-nitrate-film', 'op-wet-electrical', 'op-dark-vault', 'op-film-cleaner', 'op-moving-parts',
      'working-developer', 'developer-replenisher', 'used-fixing-bath', 'fixing-replenisher', 'acid-titrants', 'hydrogen', 'op-acidify-sample', 'op-solvent-extraction',
    ]
    for (const id of wanted) expect(cardById(id), id).toBeDefined()
  })

  it('name the banned film cleaners as banned', () => {
    expect(cards.filter(({ banned }) => banned).map(({ id }) => id)).toEqual(['carbon-tetrachloride', 'trichloroethane-111'])
    expect(lineOf(cardById('op-film-cleaner')!, 'banned').says).toMatch(/banned/)
  })

  it('have one for every material and every method of the demo laboratory', () => {
    const plan = demoLab()
    for (const { id, caution, substance } of plan.materials) {
      expect(cardById(caution), id).toBeDefined()
      expect(cardById(caution)!.substances, id).toContain(substance)
    }
    for (const { id, caution } of plan.methods) if (caution) expect(cardById(caution), id).toBeDefined()
  })

  it('send solvent work away from phones', () => {
    for (const id of ['diethyl-ether', 'ethyl-acetate', 'op-solvent-extraction']) expect(linesOf(cardById(id)!).some(({ says }) => /phone/i.test(says)), id).toBe(true)
  })

  it('ask to hold two lines at most for a dose: one of each card where there are two', () => {
    expect(cardsNeeded([cardById('acetic-acid-28')!])).toEqual([{ card: 'acetic-acid-28', version: 1, lines: ['thiosulfate', 'developer'] }])
    expect(cardsNeeded([cardById('acetic-acid-28')!, cardById('op-acid-dose')!]).map(({ lines }) => lines)).toEqual([['thiosulfate'], ['fast']])
    expect(cardsNeeded([cardById('potassium-alum')!])).toEqual([])
  })
})
