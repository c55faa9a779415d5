import type { Interlock } from '../interlock.ts'
import { builtInFor } from '../../safety/own-cards.ts'
import { say } from '../say.ts'

/**
 * A material whose caution this version does not have is not dosed at all: an amount without its caution is what must never be seen. The same
 * where the plan gives a material the card of another, harmless one, or one of the laboratory's own where this version has one for that substance.
 */
export const cardKnown: Interlock = ({ material, card }) => {
  if (material === 'water') return undefined
  const facts = { material: material.id, card: material.caution }
  const ask = { facts, doFirst: say('askSupervisorForCard', facts), source: 'common practice, no source' }
  if (!card) return { code: 'noCautionCard', ...ask }
  if (card.isOwn && builtInFor(material.substance)) return { code: 'cautionOfAnother', ...ask }
  return card.gated || card.substances.includes(material.substance) ? undefined : { code: 'cautionOfAnother', ...ask }
}
