import type { CautionCard } from './card.ts'
import { aceticAcid28, aceticAcidGlacial, acidIntoBath, sulfuricAcid } from './cards/acids.ts'
import { metabisulfite, sodiumSulfite, sulfiteIntoAcidBath } from './cards/sulfites.ts'

/** Every caution card. A new card is a literal in a family's file and a word here. */
export const cards: readonly CautionCard[] = [
  aceticAcidGlacial, aceticAcid28, sulfuricAcid, acidIntoBath,
  sodiumSulfite, sulfiteIntoAcidBath, metabisulfite,
]

const byId: ReadonlyMap<string, CautionCard> = new Map(cards.map((card) => [card.id, card]))

/** A plan may name a card that this version does not have; whoever asks must then refuse, never go on without one. */
export const cardById = (id: string): CautionCard | undefined => byId.get(id)
