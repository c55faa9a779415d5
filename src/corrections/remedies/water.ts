import { waterEvaporation } from '../../science/water/evaporation.ts'
import { bathTopUp } from '../../science/bath/top-up.ts'
import { headroomLeftLitres } from '../dose-limits.ts'
import { refusedBy } from '../interlocks.ts'
import { foundBy, readingsAt, type Found } from '../lookup.ts'
import { mixingTime } from '../mixing-time.ts'
import type { Remedy } from '../remedy.ts'
import type { Builder } from '../row.ts'
import { say, type Say } from '../say.ts'
import { SealedDose, type DoseInside } from '../sealed-dose.ts'
import { nextPortion, type Situation } from '../situation.ts'
import { act, worked } from './act.ts'
import { askedOf } from './dose.ts'

/** Water into a bath: nothing to confirm, but no more than the tank takes, and read again after it has mixed. */
export const waterDose = (
  situation: Situation,
  source: string,
  given: { code: 'water' | 'level'; litres: number; says: Say; how: readonly Say[]; inside?: Pick<DoseInside, 'working' | 'model'> },
): Remedy | undefined => {
  const { bath, exception, station } = situation
  const asked = askedOf(situation, 'water')
  if (!asked || !bath) return undefined
  const remedy: Remedy = { id: `${given.code}:water`, code: given.code, exception: exception.id, station: station.id, says: given.says, how: given.how, source }
  const refused = refusedBy(asked)
  if (refused) return { ...remedy, refused }
  const room = headroomLeftLitres(asked)
  const litres = Math.min(given.litres, room)
  const share = given.litres > 0 ? litres / given.litres : 1
  const model = given.inside?.model
  const poured = model && { ...model, to: model.from + (model.to - model.from) * share }
  return {
    ...remedy,
    wait: mixingTime(bath, 'pH'),
    dose: {
      material: 'water', unit: 'L', portion: nextPortion(situation), staged: litres < given.litres, needsCaution: [], cards: [],
      secondPerson: { required: false, offersScaledUp: false },
      rechecks: 1,
      response: { factor: 1, learnedFrom: 0 },
      amount: new SealedDose(
        { amount: litres, unit: 'L', limits: { room }, wholeAmount: given.litres, ...(given.inside?.working ? { working: given.inside.working } : {}), ...(poured ? { model: poured } : {}) },
        { exception: exception.id, station: station.id, material: 'water', cards: [], after: exception.openedAt - 1 },
      ),
      ...(litres < given.litres ? { cappedBy: 'headroom' as const } : {}),
      ...(poured ? { predicted: poured } : {}),
    },
  }
}

const specificGravityHere = ({ lab, plan, station, now }: Situation): Found | undefined => {
  const [check] = readingsAt(plan, station.id, 'specificGravity')
  return check && foundBy(lab, check, now)
}

/** Low level with a heavy bath: water went off as vapour. As much as brings the specific gravity to its aim, and never above the mark. */
export const evaporatedWater: Builder = (situation, { source }) => {
  const gravity = specificGravityHere(situation)
  const { bath, check } = situation
  if (!gravity || !bath) return []
  const made = worked(waterEvaporation, { litres: bath.litres, specificGravity: gravity.value, aimSpecificGravity: gravity.check.limits.aim })
  if (!made) return []
  const isGravity = check.kind === 'reading' && check.quantity === 'specificGravity'
  return [
    waterDose(situation, source, {
      code: 'water',
      litres: made.result.waterLitres,
      says: say('waterForEvaporation'),
      how: [say('waterOnlyToMark'), say('waterAtBathTemperature'), say('atReturn')],
      inside: {
        working: made.working,
        ...(isGravity ? { model: { quantity: 'specificGravity', from: gravity.value, to: gravity.check.limits.aim } } : {}),
      },
    }),
  ].filter((it) => it !== undefined)
}

/** Low level with the strength as it should be: replenisher or tank-strength solution to the mark; litres where the level is read as a share or in litres. */
export const topUpToMark: Builder = (situation, row) => {
  const { check, value, bath } = situation
  if (check.kind !== 'reading' || value === undefined || !bath) return []
  const { aim } = check.limits
  const made =
    check.unit === '%'
      ? worked(bathTopUp, { litres: bath.litres, levelFraction: value / 100, aimLevelFraction: aim / 100 })
      : check.unit === 'L'
        ? worked(bathTopUp, { litres: bath.litres, levelFraction: value / bath.litres, aimLevelFraction: aim / bath.litres })
        : undefined
  return [
    act(situation, row, {
      code: 'level',
      says: say('topUpWithReplenisher'),
      how: [say('toMark'), say('cautionOfReplenisher')],
      wait: mixingTime(bath, 'pH'),
      ...(made ? { settings: [{ quantity: 'volume', to: made.result.addLitres, unit: 'L', working: made.working }] } : { lacks: say('levelAreaNotInPlan', { unit: check.unit }) }),
    }),
  ]
}
