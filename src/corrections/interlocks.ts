import type { DoseAsked, Interlock } from './interlock.ts'
import { alumAfterAcid } from './interlocks/alum-after-acid.ts'
import { answerInBounds } from './interlocks/answer-in-bounds.ts'
import { bathCoolEnough } from './interlocks/bath-cool-enough.ts'
import { cardKnown } from './interlocks/card-known.ts'
import { exhaustAndEyewash } from './interlocks/exhaust-and-eyewash.ts'
import { materialForStation } from './interlocks/material-for-station.ts'
import { neverTogether } from './interlocks/never-together.ts'
import { noAcidIntoDeveloper } from './interlocks/no-acid-into-developer.ts'
import { noAlkaliIntoAlum } from './interlocks/no-alkali-into-alum.ts'
import { onlyDiluteAcid } from './interlocks/only-dilute-acid.ts'
import { readingBeforeDose } from './interlocks/reading-before-dose.ts'
import { roomInTank } from './interlocks/room-in-tank.ts'
import { withinSafeSingleDose } from './interlocks/safe-single-dose.ts'
import { sulfiteFirst } from './interlocks/sulfite-first.ts'
import { sulfiteInLimits } from './interlocks/sulfite-in-limits.ts'
import type { Refused } from './say.ts'

/** In the order in which they speak: what can never be done first, what has to be done before next, what is too much last. */
export const interlocks: readonly Interlock[] = [
  materialForStation, noAcidIntoDeveloper, noAlkaliIntoAlum, onlyDiluteAcid, neverTogether, cardKnown,
  sulfiteFirst, sulfiteInLimits, bathCoolEnough, exhaustAndEyewash, alumAfterAcid, readingBeforeDose, answerInBounds,
  roomInTank, withinSafeSingleDose,
]

/** The first reason why a dose must not be given, or nothing. */
export const refusedBy = (asked: DoseAsked): Refused | undefined => {
  for (const interlock of interlocks) {
    const refused = interlock(asked)
    if (refused) return refused
  }
  return undefined
}
