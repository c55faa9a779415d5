import type { CautionCard } from './card.ts'
import { cards } from './cards.ts'
import { heldLines, type CardNeeded } from './needed.ts'

type Inputs = { readonly [field: string]: unknown }

const list = (given: unknown): readonly Inputs[] => (Array.isArray(given) ? (given as Inputs[]) : [])
const field = (given: unknown, name: string): unknown => (given !== null && typeof given === 'object' ? (given as Inputs)[name] : undefined)

/** What a calculation of the bench says the amount of: these are weighed or poured by whoever asks. */
const pouredBy: { readonly [calculation: string]: (inputs: Inputs) => readonly unknown[] } = {
  'acidBase.dose': ({ reagent }) => [field(reagent, 'substance')],
  'mix.batch': ({ formula }) => list(field(formula, 'steps')).map((step) => step['substance']),
  'mix.hydrate': ({ substance }) => [substance],
  'bath.correct': ({ materials }) => list(materials).flatMap(({ provides }) => Object.keys((provides as object | undefined) ?? {})),
}

const isCorrosive = ({ ghs }: CautionCard): boolean => ghs.pictograms.includes('GHS05') || ghs.pictograms.includes('GHS06')

/**
 * Cautions to be read before a calculation shows its amounts, the corrosive and the poisonous first. No more than two lines are held, however many
 * substances a formula has; the other cards stand beside.
 */
export const cautionsBefore = (calculation: string, inputs: Inputs): { cards: CautionCard[]; needed: CardNeeded[] } => {
  const substances = new Set(pouredBy[calculation]?.(inputs) ?? [])
  const found = cards
    .filter((card) => card.gated && !card.banned && card.substances.some((it) => substances.has(it)))
    // Several cards of one substance are strengths of it: the strongest speaks for all where nobody says which.
    .sort((a, b) => Number(isCorrosive(b)) - Number(isCorrosive(a)))
  const lines = found.length === 1 ? heldLines : 1
  return { cards: found, needed: found.slice(0, heldLines).map(({ id, version, deadliest }) => ({ card: id, version, lines: deadliest.slice(0, lines) })) }
}
