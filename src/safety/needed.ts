import { lineOf, type CautionCard, type CardLine } from './card.ts'

/** A card as a dose asks for it: the version that must be read, and the lines of it that are held to confirm this dose. */
export interface CardNeeded {
  card: string
  version: number
  lines: readonly string[]
}

/** Lines held for one dose in all. More holds breed blind confirming. */
export const heldLines = 2

/** A confirmation stands this long. Common practice, no source: whoever comes back after an hour reads the card again. */
export const confirmationStandsMilliseconds = 3_600_000

/** What must be confirmed before a dose: at most two cards, and of them at most two lines, the deadliest of each first. */
export const cardsNeeded = (cards: readonly CautionCard[]): CardNeeded[] => {
  const gated = cards.filter((card) => card.gated)
  if (gated.length > heldLines) throw new Error(`a dose asks for ${gated.length} cards; ${heldLines} can be held`)
  return gated.map((card) => ({
    card: card.id,
    version: card.version,
    lines: gated.length === 1 ? [...card.deadliest] : [card.deadliest[0]],
  }))
}

export const neededLines = (needed: CardNeeded, card: CautionCard): CardLine[] => needed.lines.map((key) => lineOf(card, key))
