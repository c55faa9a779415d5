import type { Station } from '../../plan/machine.ts'
import { replenisherId, type Material } from '../../plan/material.ts'
import { waterEvaporation } from '../../science/water/evaporation.ts'
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
import { askedOf, doseRemedy } from './dose.ts'
import { toMark } from './to-mark.ts'

/** Water into a bath: nothing to confirm, but no more than the tank takes, and read again after it has mixed. */
export const waterDose = (
  situation: Situation,
  source: string,
  given: { code: 'water' | 'level'; litres: number; toMark?: number | undefined; says: Say; how: readonly Say[]; inside?: Pick<DoseInside, 'working' | 'model'> },
): Remedy | undefined => {
  const { bath, exception, station } = situation
  const asked = askedOf(situation, 'water')
  if (!asked || !bath) return undefined
  const remedy: Remedy = { id: `${given.code}:water`, code: given.code, exception: exception.id, station: station.id, says: given.says, how: given.how, source }
  const refused = refusedBy(asked)
  if (refused) return { ...remedy, refused }
  const room = headroomLeftLitres(asked)
  const most = Math.min(room, given.toMark ?? Number.POSITIVE_INFINITY)
  const litres = Math.min(given.litres, most)
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
      ...(litres < given.litres ? { cappedBy: most < room ? ('mark' as const) : ('headroom' as const) } : {}),
      ...(poured ? { predicted: poured } : {}),
    },
  }
}

const specificGravityHere = ({ lab, plan, station, now }: Situation): Found | undefined => {
  const [check] = readingsAt(plan, station.id, 'specificGravity')
  return check && foundBy(lab, check, now)
}

/** Up to the mark of the level as last read here; undefined where no level, or no tank surface, is known. */
const litresToMark = ({ lab, plan, station, now, bath }: Situation): number | undefined => {
  const [check] = readingsAt(plan, station.id, 'level')
  const found = check && foundBy(lab, check, now)
  return found && bath ? toMark(check, bath, found.value)?.result.addLitres : undefined
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
      toMark: litresToMark(situation),
      says: say('waterForEvaporation'),
      how: [say('waterOnlyToMark'), say('waterAtBathTemperature'), say('atReturn')],
      inside: {
        working: made.working,
        ...(isGravity ? { model: { quantity: 'specificGravity', from: gravity.value, to: gravity.check.limits.aim } } : {}),
      },
    }),
  ].filter((it) => it !== undefined)
}

/** Low level with the strength as it should be: replenisher or tank-strength solution to the mark, behind the card of the replenisher; litres where the plan lets them be known. */
export const topUpToMark: Builder = (situation, row) => {
  const { check, value, bath, station } = situation
  if (check.kind !== 'reading' || value === undefined || !bath) return []
  const made = toMark(check, bath, value)
  const replenisher = replenisherOf(station)
  const says = say('topUpWithReplenisher')
  if (!made) {
    const how = [say('toMark'), say('cautionOfReplenisher', { card: replenisher.caution })]
    return [act(situation, row, { code: 'level', says, how, wait: mixingTime(bath, 'pH'), lacks: say('levelAreaNotInPlan', { unit: check.unit }) })]
  }
  const { result, working } = made
  const dose = doseRemedy(situation, replenisher, {
    code: 'level', says, how: [say('toMark'), say('atReturn')], wait: 'pH', source: row.source,
    compute: () => ({ whole: result.addLitres * 1000, firstShare: 1, working }),
  })
  return dose ? [dose] : []
}

/** What feeds a bath, as a material: its parts are dosed by nobody, so it has no strength of its own. */
const replenisherOf = ({ id, kind }: Station): Material => ({
  id: replenisherId, name: '', substance: replenisherId, strength: { kind: 'solid', form: 'anhydrous' }, unit: 'mL', for: [id],
  caution: kind === 'developer' ? 'developer-replenisher' : kind === 'stop' ? 'acid-stop-bath' : 'fixing-replenisher',
})
