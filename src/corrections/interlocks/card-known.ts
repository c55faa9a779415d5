import type { Interlock } from '../interlock.ts'
import { say } from '../say.ts'

/** A material whose caution this version does not have is not dosed at all: an amount without its caution is what must never be seen. */
export const cardKnown: Interlock = ({ material, card }) =>
  material !== 'water' && !card
    ? { code: 'noCautionCard', facts: { material: material.id, card: material.caution }, doFirst: say('askSupervisorForCard', { card: material.caution }), source: 'common practice, no source' }
    : undefined
