import type { LabPlan } from '../plan/lab-plan.ts'
import type { OwnCaution } from '../plan/own-caution.ts'
import type { PlanProblem } from '../plan/plan-problems.ts'
import type { WrittenPlan } from '../plan/written-plan.ts'
import type { CautionCard, CardLine, NeverLine } from './card.ts'
import { cardById, cards } from './cards.ts'

type Owns = Pick<LabPlan, 'cautions'>

/** Versions of added words stand behind the point of the card's own: 3.002 is version 3 with the second version of what was added. */
const behindThePoint = 1000

/** A card as this laboratory has it: one of the app's with whatever was added to it, or one of its own. Undefined where there is none of that id. */
export const cardOf = ({ cautions = [] }: Owns, id: string): CautionCard | undefined => {
  const builtIn = cardById(id)
  if (builtIn) return cautions.filter((it) => it.addsTo === id).reduce(added, builtIn)
  const own = cautions.find((it) => it.id === id && it.addsTo === undefined)
  return own && alone(own)
}

/** The laboratory's cards that stand alone. */
export const ownCards = ({ cautions = [] }: Owns): CautionCard[] => cautions.filter(({ addsTo }) => addsTo === undefined).map(alone)

/** The card of the app that is made for a substance: no other takes its place. */
export const builtInFor = (substance: string): CautionCard | undefined => cards.find((card) => card.substances.includes(substance) && !card.banned)

const lines = (card: OwnCaution, section: 'wear' | 'ventilation' | 'firstAid' | 'spill' | 'never'): CardLine[] =>
  (card[section] ?? '').split('\n').map((says) => says.trim()).filter(Boolean).map((says, index) => ({ key: `own-${card.id}-${section}-${index + 1}`, says, isOwn: true }))
const neverLines = (card: OwnCaution): NeverLine[] => lines(card, 'never').map((line) => ({ ...line, with: '', result: '' }))

const codesOf = ({ hazards = '' }: OwnCaution): { pictograms: string[]; h: string[]; p: string[]; regional: string[] } => {
  const codes = hazards.split(/[\s,;]+/).map((code) => code.toUpperCase()).filter(Boolean)
  const is = (pattern: RegExp): string[] => codes.filter((code) => pattern.test(code))
  return { pictograms: is(/^GHS0[1-9]$/), h: is(/^H\d/), p: is(/^P\d/), regional: codes.filter((code) => !/^(GHS0[1-9]$|[HP]\d)/.test(code)) }
}

const alone = (own: OwnCaution): CautionCard => {
  const [first, second] = neverLines(own)
  return {
    id: own.id, version: own.version, kind: 'chemical', name: own.name, use: '', substances: [], isOwn: true,
    ghs: { signal: 'supplierVaries', ...codesOf(own) },
    never: neverLines(own), wear: lines(own, 'wear'), ventilation: lines(own, 'ventilation'), firstAid: lines(own, 'firstAid'), spill: lines(own, 'spill'), storage: [], exposureLimits: [],
    // What a laboratory writes itself is always read before an amount.
    deadliest: second ? [first!.key, second.key] : [first!.key],
    gated: true,
    source: '',
  }
}

const joined = (has: readonly string[], more: readonly string[]): string[] => [...new Set([...has, ...more])]

/** Everything that the card says stays, in its place; the laboratory's own follows it. */
const added = (card: CautionCard, own: OwnCaution): CautionCard => {
  const codes = codesOf(own)
  return {
    ...card,
    version: Number((card.version + own.version / behindThePoint).toFixed(3)),
    ghs: { ...card.ghs, pictograms: joined(card.ghs.pictograms, codes.pictograms), h: joined(card.ghs.h, codes.h), p: joined(card.ghs.p, codes.p), regional: joined(card.ghs.regional, codes.regional) },
    never: [...card.never, ...neverLines(own)],
    wear: [...card.wear, ...lines(own, 'wear')],
    ventilation: [...card.ventilation, ...lines(own, 'ventilation')],
    firstAid: [...card.firstAid, ...lines(own, 'firstAid')],
    spill: [...card.spill, ...lines(own, 'spill')],
  }
}

/** What a plan's schema cannot say of its cautions: cards that are there, none in the place of one of the app's, none that leaves out what a person needs. */
export const cautionProblems = (plan: WrittenPlan): PlanProblem[] => {
  const { cautions = [] } = plan
  const isThere = (id: string): boolean => cardById(id) !== undefined || cautions.some((it) => it.id === id && it.addsTo === undefined)
  const mustBe = (id: string | undefined, path: string): PlanProblem[] => (id === undefined || isThere(id) ? [] : [{ path, code: 'unknownId', detail: id }])
  return [
    ...cautions.flatMap((card, index): PlanProblem[] => [
      ...(cardById(card.id) ? [{ path: `cautions[${index}].id`, code: 'repeatedId' as const, detail: card.id }] : []),
      ...(card.addsTo !== undefined && !cardById(card.addsTo) ? [{ path: `cautions[${index}].addsTo`, code: 'unknownId' as const, detail: card.addsTo }] : []),
      ...(card.addsTo === undefined ? (['wear', 'firstAid'] as const).flatMap((field): PlanProblem[] => (card[field] ? [] : [{ path: `cautions[${index}].${field}`, code: 'shape', detail: '', why: 'missing' }])) : []),
    ]),
    ...plan.materials.flatMap((material, index): PlanProblem[] => {
      const path = `materials[${index}].caution`
      const proper = cardById(material.caution) ? undefined : builtInFor(material.substance)
      return proper ? [{ path, code: 'cautionReplaced', detail: proper.name }] : mustBe(material.caution, path)
    }),
    ...plan.methods.flatMap((method, m) => [...mustBe(method.caution, `methods[${m}].caution`), ...method.steps.flatMap(({ caution }, s) => mustBe(caution, `methods[${m}].steps[${s}].caution`))]),
  ]
}
