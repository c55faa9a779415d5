import { responseBounds } from '../answers.ts'
import type { Interlock } from '../interlock.ts'
import { unexplained } from '../response.ts'
import { say } from '../say.ts'

/**
 * A bath that answered far more or far less than any bath does was not given what the label says, or is not as large or not as strong as it
 * is thought to be. Nothing more of that lot goes in until somebody has found out why.
 */
export const answerInBounds: Interlock = ({ lab, plan, now, station, material, lot, resets }) => {
  if (material === 'water') return undefined
  const answer = unexplained(lab, plan, { station: station.id, material: material.id, lot, now, resets })
  if (!answer) return undefined
  return {
    code: 'answerOutOfBounds',
    facts: { material: material.id, ratio: Number(answer.ratio.toFixed(2)), ...responseBounds, ...(answer.lot ? { lot: answer.lot } : {}) },
    doFirst: say('checkDrumVolumeAnalysis'),
    source: 'bounds: own choice, shown on simulated baths',
  }
}
