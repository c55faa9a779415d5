import { answersOf, responseBounds } from '../answers.ts'
import type { Interlock } from '../interlock.ts'
import { say } from '../say.ts'

/**
 * A bath that answered far more or far less than any bath does was not given what the label says, or is not as large or not as strong as it
 * is thought to be. Nothing more of that material goes in for this exception until somebody has looked and reset the response with a
 * reason, or takes it from another lot.
 */
export const answerInBounds: Interlock = ({ lab, plan, exception, material, lot, resets }) => {
  if (!exception || material === 'water') return undefined
  const answer = answersOf(lab, plan, exception).findLast((it) => it.material === material.id && it.kind === 'outOfBounds')
  if (!answer) return undefined
  const isReset = resets.some((it) => it.station === exception.station && (it.material ?? material.id) === material.id && it.at >= answer.readAt)
  if (isReset || (lot !== undefined && lot !== answer.lot)) return undefined
  return {
    code: 'answerOutOfBounds',
    facts: { material: material.id, ratio: Number(answer.ratio.toFixed(2)), ...responseBounds, ...(answer.lot ? { lot: answer.lot } : {}) },
    doFirst: say('checkDrumVolumeAnalysis'),
    source: 'bounds: own choice, shown on simulated baths',
  }
}
