import { materialOf, placeOf } from '../plan/find.ts'
import type { MaterialId, StationId } from '../plan/ids.ts'
import type { LabPlan } from '../plan/lab-plan.ts'
import type { LabState } from '../projections/lab.ts'
import type { EntryId } from '../record/ids.ts'
import { cardsNeeded } from '../safety/needed.ts'
import { cardOf } from '../safety/own-cards.ts'
import { isFixing } from './bath-now.ts'
import type { DoseAsked } from './interlock.ts'
import { refusedBy } from './interlocks.ts'
import { mixingTime } from './mixing-time.ts'
import { isAcid, isAcidOrAlkali } from './nature.ts'
import { headroomLeftLitres } from './dose-limits.ts'
import { cardsOf } from './remedies/dose.ts'
import { finite, portionLimits } from './remedies/portion.ts'
import type { Remedy } from './remedy.ts'
import { say } from './say.ts'
import { SealedDose } from './sealed-dose.ts'
import { dosesInto, nextPortion, situationOf, type Known } from './situation.ts'

export interface OwnDose {
  exception?: EntryId
  station: StationId
  material: MaterialId | 'water'
  amount: number
  unit: 'mL' | 'L' | 'g' | 'kg'
}

/**
 * A dose of somebody's own choosing, instead of what was suggested or without any exception. It passes the same interlocks, with its amount, and
 * asks for the same cautions; the reason for it is kept with the entry. Acid or alkali that nothing has computed is never one person's own decision.
 * Undefined where the station has no bath.
 */
export const ownDose = (lab: LabState, plan: LabPlan, { exception: id, station: at, material: materialId, amount, unit }: OwnDose, now: number, known: Known = {}): Remedy | undefined => {
  const { machine, station } = placeOf(plan, at)
  const { bath } = station
  if (!bath) return undefined
  const situation = id ? situationOf(lab, plan, id, now, known) : undefined
  const material = materialId === 'water' ? 'water' : materialOf(plan, materialId)
  const card = material === 'water' ? undefined : cardOf(plan, material.caution)
  const lot = known.lots?.[materialId]
  const asked: DoseAsked = {
    lab, plan, now, machine, station, bath, material, amount: { amount, unit }, resets: known.resets ?? [],
    ...(card ? { card } : {}),
    ...(lot ? { lot } : {}),
    ...(situation ? { exception: situation.exception, mark: situation.mark } : {}),
  }
  const remedy: Remedy = {
    id: `own:${materialId}`, code: 'own', station: station.id, says: say('ownDose', { material: materialId }), how: [say('atReturn')],
    source: 'own decision, with its reason', ...(id ? { exception: id } : {}),
  }
  const refused = refusedBy(asked)
  if (refused) return { ...remedy, refused }
  const cards = material === 'water' ? [] : cardsOf(plan, material, station)
  const needsCaution = cardsNeeded(cards)
  const lastDose = dosesInto(lab, station.id).findLast((dose) => dose.exception === id && dose.material === materialId)
  return {
    ...remedy,
    wait: mixingTime(bath, 'titration', { slowAcid: isAcid(material) && isFixing(station) }),
    dose: {
      material: materialId, unit, portion: situation ? nextPortion(situation) : 1, staged: false, needsCaution, cards: cards.map((it) => it.id),
      secondPerson: { required: material !== 'water' && (isAcidOrAlkali(material) || (material.secondPerson ?? false)), offersScaledUp: false },
      rechecks: 1, response: { factor: 1, learnedFrom: 0 },
      amount: new SealedDose(
        { amount, unit, limits: material === 'water' ? { room: headroomLeftLitres(asked) } : finite(portionLimits(asked, material)) },
        {
          station: station.id, material: materialId, cards: needsCaution,
          after: lastDose?.time ?? (situation ? situation.exception.openedAt - 1 : Number.NEGATIVE_INFINITY),
          ...(id ? { exception: id } : {}),
        },
      ),
    },
  }
}
