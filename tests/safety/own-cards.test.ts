import { describe, expect, it } from 'vitest'
import { cardsOf } from '../../src/corrections/remedies/dose.ts'
import { cardKnown } from '../../src/corrections/interlocks/card-known.ts'
import type { DoseAsked } from '../../src/corrections/interlock.ts'
import { demoLab } from '../../src/demo/lab.ts'
import { withCautionVersions } from '../../src/plan/caution-version.ts'
import type { LabPlan } from '../../src/plan/lab-plan.ts'
import type { OwnCaution } from '../../src/plan/own-caution.ts'
import { parsePlan } from '../../src/plan/plan-problems.ts'
import { linesOf } from '../../src/safety/card.ts'
import { cards, cardById } from '../../src/safety/cards.ts'
import { cardsNeeded, neededLines } from '../../src/safety/needed.ts'
import { cautionProblems, cardOf, ownCards } from '../../src/safety/own-cards.ts'

const plan = demoLab()
const own = (more: Partial<OwnCaution> = {}): OwnCaution =>
  ({ id: 'hardener', name: 'Hardener of the house', version: 1, hazards: 'GHS05, h314 P280 EUH208', never: 'Never with the developer.\n\nNever in the open drain.\nNever hot.', wear: 'Gloves and goggles.', firstAid: 'Rinse for 15 minutes.', ...more }) as OwnCaution
const withCards = (...cautions: OwnCaution[]): LabPlan => ({ ...plan, cautions })

describe('a card of the laboratory’s own', () => {
  const card = cardOf(withCards(own()), 'hardener')!

  it('says what was written, line by line, each as its own', () => {
    expect(card).toMatchObject({ name: 'Hardener of the house', isOwn: true, gated: true, ghs: { pictograms: ['GHS05'], h: ['H314'], p: ['P280'], regional: ['EUH208'] } })
    expect(card.never.map(({ says }) => says)).toEqual(['Never with the developer.', 'Never in the open drain.', 'Never hot.'])
    expect(linesOf(card).every(({ isOwn }) => isOwn)).toBe(true)
    expect(new Set(linesOf(card).map(({ key }) => key)).size).toBe(linesOf(card).length)
  })
  it('is read before an amount: its first two sentences are held', () => {
    const [needed] = cardsNeeded([card])
    expect(neededLines(needed!, card).map(({ says }) => says)).toEqual(['Never with the developer.', 'Never in the open drain.'])
  })
  it('is in the safety menu; what is only added to another is not', () => expect(ownCards(withCards(own(), own({ id: 'more' as OwnCaution['id'], addsTo: 'borax' }))).map(({ id }) => id)).toEqual(['hardener']))
})

describe('words added to a card of the app', () => {
  it.each(cards.map(({ id }) => id))('leave every sentence and code of %s in its place', (id) => {
    const before = cardById(id)!
    const after = cardOf(withCards(own({ addsTo: id })), id)!
    expect({ ...after, version: 0, ghs: 0, never: after.never.slice(0, before.never.length), wear: after.wear.slice(0, before.wear.length), firstAid: after.firstAid.slice(0, before.firstAid.length) }).toEqual({ ...before, version: 0, ghs: 0 })
    for (const codes of ['pictograms', 'h', 'p', 'regional'] as const) expect(after.ghs[codes].slice(0, before.ghs[codes].length)).toEqual(before.ghs[codes])
    expect(after.ghs.signal).toBe(before.ghs.signal)
    expect(linesOf(after).filter(({ isOwn }) => isOwn)).toHaveLength(5)
    expect(after.version).toBeGreaterThan(before.version)
  })
  it('are asked for anew when they change', () => {
    const versions = [1, 2].map((version) => cardOf(withCards(own({ addsTo: 'acetic-acid-28', version })), 'acetic-acid-28')!.version)
    expect(versions[0]).not.toBe(versions[1])
  })
  it('come with the card at a dose', () => {
    const acid = plan.materials.find(({ id }) => id === 'acetic-acid-28')!
    const station = plan.machines[0]!.stations.find(({ id }) => id === 'neg-1-fix')!
    const said = cardsOf(withCards(own({ addsTo: 'acetic-acid-28' })), acid, station).flatMap(linesOf).filter(({ isOwn }) => isOwn)
    expect(said.length).toBe(5)
  })
})

describe('a card cannot be weakened', () => {
  const acid = plan.materials.findIndex(({ id }) => id === 'acetic-acid-28')
  const swapped: LabPlan = { ...withCards(own()), materials: plan.materials.map((material, index) => (index === acid ? { ...material, caution: 'hardener' } : material)) }

  it('by naming one of the laboratory’s own in its place: the plan is refused, and at the tank the dose', () => {
    expect(cautionProblems(swapped)).toMatchObject([{ path: `materials[${acid}].caution`, code: 'cautionReplaced' }])
    const material = swapped.materials[acid]!
    expect(cardKnown({ material, card: cardOf(swapped, 'hardener') } as DoseAsked)).toMatchObject({ code: 'cautionOfAnother' })
    expect(cardKnown({ material: { ...material, caution: 'acetic-acid-28' }, card: cardOf(swapped, 'acetic-acid-28') } as DoseAsked)).toBeUndefined()
  })
  it('by giving one of the laboratory’s own the same id', () => {
    expect(cautionProblems(withCards(own({ id: 'acetic-acid-28' as OwnCaution['id'] })))).toMatchObject([{ path: 'cautions[0].id', code: 'repeatedId' }])
    expect(cardOf(withCards(own({ id: 'acetic-acid-28' as OwnCaution['id'] })), 'acetic-acid-28')).toEqual(cardById('acetic-acid-28'))
  })
})

describe('the cautions of a plan', () => {
  it('of the demo laboratory hold', () => expect(cautionProblems(plan)).toEqual([]))
  it('say what to wear and first aid where they stand alone', () => {
    const { wear: _, firstAid: __, ...bare } = own()
    expect(cautionProblems(withCards(bare)).map(({ path, why }) => `${path} ${why}`)).toEqual(['cautions[0].wear missing', 'cautions[0].firstAid missing'])
    expect(cautionProblems(withCards({ ...bare, addsTo: 'borax' }))).toEqual([])
  })
  it('name cards that are there', () => {
    expect(cautionProblems(withCards(own({ addsTo: 'nothing' })))).toMatchObject([{ path: 'cautions[0].addsTo', code: 'unknownId' }])
    const method = { ...plan.methods[0]!, caution: 'gone', steps: [{ says: 'Stir', caution: 'gone too' }] }
    expect(cautionProblems({ ...plan, methods: [method] }).map(({ path }) => path)).toEqual(['methods[0].caution', 'methods[0].steps[0].caution'])
    const solvent = { ...plan.materials[0]!, substance: 'solvent of the house', for: [], caution: 'gone' }
    expect(cautionProblems({ ...plan, materials: [solvent] })).toMatchObject([{ path: 'materials[0].caution', code: 'unknownId' }])
    expect(cautionProblems({ ...withCards(own()), materials: [{ ...solvent, caution: 'hardener' }] })).toEqual([])
  })
  it('get their next version when they are signed with other words, and only then', () => {
    const before = withCards(own(), own({ id: 'other' as OwnCaution['id'] }))
    const versions = (after: LabPlan) => withCautionVersions(before, after).cautions!.map(({ version }) => version)
    expect(versions(withCards(own({ never: 'Never at all.' }), own({ id: 'other' as OwnCaution['id'] })))).toEqual([2, 1])
    expect(versions(before)).toEqual([1, 1])
  })
  it('are part of a plan that holds', () => expect(parsePlan(withCards(own()))).toMatchObject({ ok: true }))
})
