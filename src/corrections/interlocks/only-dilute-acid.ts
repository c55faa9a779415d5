import { mostDilutePercent, thingsOf } from '../../safety/things.ts'
import { isFixing } from '../bath-now.ts'
import type { Interlock } from '../interlock.ts'
import { isAcid } from '../nature.ts'
import { say } from '../say.ts'

/**
 * Into a fixing bath acetic acid of at most 28 %, and no other acid: strong, undiluted or fast acid makes sulfur faster than sulfite can take it
 * back. Into any other bath no acid as it comes from the drum: it is diluted before it is brought to the tanks.
 */
export const onlyDiluteAcid: Interlock = ({ station, material }) => {
  if (material === 'water' || !isAcid(material)) return undefined
  const things = thingsOf(material.substance, material.strength)
  const isUndiluted = things.includes('concentratedAcid') || (material.substance === 'aceticAcid' && !things.includes('diluteAcid'))
  if (isFixing(station) ? things.includes('diluteAcid') : !isUndiluted) return undefined
  return {
    code: 'onlyDiluteAcid',
    facts: { material: material.id, mostPercent: mostDilutePercent },
    doFirst: material.substance === 'aceticAcid' ? say('diluteAcidOutside', { percent: mostDilutePercent }) : say('useDiluteAceticAcid', { percent: mostDilutePercent }),
    source: '28 %: US Army SS0513; acid slowly and dilute: Crabtree and Hartt 1929, Studio Light 1916',
  }
}
