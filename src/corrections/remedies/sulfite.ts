import { thingsOf } from '../../safety/things.ts'
import { isFixing } from '../bath-now.ts'
import { foundBy, readingsAt } from '../lookup.ts'
import type { Remedy } from '../remedy.ts'
import type { Builder } from '../row.ts'
import { say, type Say } from '../say.ts'
import type { Situation } from '../situation.ts'
import { massBalanceDose } from './mass-balance.ts'
import { doseRemedy } from './dose.ts'
import { phDose } from './ph.ts'

const isPlainSulfite = (substance: string): boolean => ['sodiumSulfite', 'potassiumSulfite'].includes(substance) && thingsOf(substance).includes('sulfite')

const howIn = (situation: Situation): readonly Say[] =>
  isFixing(situation.station)
    ? [say('exhaustOn'), say('dissolveOutside'), say('slowlyAtReturn', { minutes: 10 }), say('neverSolid'), say('neverHydroxide')]
    : [say('dissolveOutside'), say('atReturn')]

/** Sulfite solution to the strength that its own check asks for. */
const toStrength = (situation: Situation, source: string, found: number, aim: number): Remedy[] =>
  situation.plan.materials
    .filter((material) => material.for.includes(situation.station.id) && isPlainSulfite(material.substance))
    .flatMap((material) =>
      doseRemedy(situation, material, {
        code: 'sulfite', says: say('sulfiteDose', { material: material.id }), how: howIn(situation), wait: 'titration', source,
        compute: (factor) => massBalanceDose(situation, material, { found, aim, factor }),
      }) ?? [],
    )

/** Before any acid: the sulfite that the fixing bath is short of. Nothing where it was found in limits. */
export const sulfiteWhereShort: Builder = (situation, { source }) => {
  const { lab, plan, station, now } = situation
  const found = readingsAt(plan, station.id, 'concentration', 'sodiumSulfite')
    .map((check) => foundBy(lab, check, now))
    .find((it) => it && it.judged.verdict !== 'IN' && it.judged.side === 'low')
  return found ? toStrength(situation, source, found.value, found.check.limits.aim) : []
}

/** For sulfite found low in a fixing bath: to its aim. */
export const sulfiteToAim: Builder = (situation, { source }) =>
  situation.check.kind === 'reading' && situation.value !== undefined ? toStrength(situation, source, situation.value, situation.check.limits.aim) : []

/** For a pH found low in a fixing bath: sulfite as solution, as much as its pH asks for. */
export const sulfiteForPh: Builder = (situation, { source }) =>
  situation.plan.materials
    .filter((material) => material.for.includes(situation.station.id) && isPlainSulfite(material.substance))
    .flatMap((material) =>
      doseRemedy(situation, material, {
        code: 'sulfite', says: say('sulfiteForPh', { material: material.id }), how: howIn(situation), wait: 'pH', source,
        compute: (factor) => phDose(situation, material, factor),
      }) ?? [],
    )
