import type { Material } from '../../plan/material.ts'
import { bathCorrect } from '../../science/bath/correct.ts'
import type { Step } from '../../science/calculation.ts'
import { above } from '../../science/decimal.ts'
import { concentrationAt, isDeveloper, isFixing } from '../bath-now.ts'
import { headroomLeftLitres } from '../dose-limits.ts'
import type { Remedy } from '../remedy.ts'
import type { Builder, Row } from '../row.ts'
import { say } from '../say.ts'
import type { Situation } from '../situation.ts'
import { act, worked } from './act.ts'
import { askedOf, doseRemedy } from './dose.ts'
import { gramsPerUnit, statedForm } from './mass-balance.ts'
import { waterDose } from './water.ts'

/** More than this share of a bath is not run off without the supervisor. Common practice, no source. */
const freelyBledShare = 0.25

/** Order of mixing a developer: metol first, then sulfite, hydroquinone, alkali, bromide last. Order from memory. */
const mixingOrder: readonly string[] = ['metol', 'phenidone', 'sodiumSulfite', 'potassiumSulfite', 'hydroquinone', 'borax', 'sodiumMetaborate', 'sodiumCarbonate', 'potassiumCarbonate']
const place = (substance: string): number => {
  const index = mixingOrder.indexOf(substance)
  return index >= 0 ? index : substance === 'potassiumBromide' ? mixingOrder.length + 1 : mixingOrder.length
}

interface Judged {
  name: string
  gramsPerLitre: number
  aimGramsPerLitre: number
  toleranceGramsPerLitre: number
}

/** Untitrated constituents are taken to stand at the plan's figure, and may end this far from it. Common practice, no source. */
const assumedTolerance = 0.05

/**
 * What the bath is judged by. What is out is brought to its aim; what is in limits may stay as it is or come half way to its warning limit, so that
 * nothing is poured for its sake alone. A fixing bath is corrected in what is titrated; its acid and alum have remedies of their own.
 */
const judgedConstituents = (situation: Situation): Judged[] => {
  const { lab, plan, station, now, check, value } = situation
  return (station.bath?.constituents ?? []).flatMap(({ substance, gramsPerLitre }): Judged[] => {
    const own = check.kind === 'reading' && check.of === substance && value !== undefined ? { value, limits: check.limits, verdict: 'ACT' } : undefined
    const other = own ? undefined : concentrationAt(lab, plan, station, substance, now)
    const found = own ?? (other && { value: other.value, limits: other.check.limits, verdict: other.judged.verdict })
    if (!found)
      return isFixing(station) ? [] : [{ name: substance, gramsPerLitre, aimGramsPerLitre: gramsPerLitre, toleranceGramsPerLitre: gramsPerLitre * assumedTolerance }]
    const { aim, warningLow, warningHigh } = found.limits
    const band = Math.min(...[warningLow, warningHigh].flatMap((limit) => (limit === undefined ? [] : [Math.abs(limit - aim)])))
    const offAim = Math.abs(found.value - aim)
    const tolerance = found.verdict === 'IN' ? Math.max(offAim, Number.isFinite(band) ? band / 2 : offAim) : 0
    return [{ name: substance, gramsPerLitre: found.value, aimGramsPerLitre: aim, toleranceGramsPerLitre: tolerance }]
  })
}

/** The bath as one system: run off what is too strong, add what is weak in the order of mixing, water to the level. */
export const composition: Builder = (situation, row) => {
  const { bath, station, plan } = situation
  const asked = askedOf(situation, 'water')
  if (!bath || !asked) return []
  const constituents = judgedConstituents(situation)
  const materials = plan.materials
    .filter((material) => material.for.includes(station.id) && constituents.some(({ name }) => name === material.substance))
    .sort((a, b) => place(a.substance) - place(b.substance))
  const perUnit = (material: Material): number => gramsPerUnit(material, statedForm(situation, material.substance))
  const made = worked(bathCorrect, {
    litres: bath.litres,
    headroomLitres: headroomLeftLitres(asked),
    constituents,
    ...(isFixing(station) ? { maxBleedLitres: 0 } : {}),
    materials: materials.map((material) =>
      material.unit === 'mL'
        ? { name: material.id, unit: 'L' as const, provides: { [material.substance]: perUnit(material) * 1000 } }
        : { name: material.id, unit: 'g' as const, provides: { [material.substance]: perUnit(material) } },
    ),
  })
  if (!made) return []
  const { bleedLitres, adds, waterLitres, afterLitres, obstacles } = made.result
  const system: System = { bleedLitres, afterLitres, constituents }
  const doses = adds.flatMap(({ material: id, amount, unit }) => {
    const material = materials.find((it) => it.id === id)!
    return addRemedy(situation, row, { material, whole: unit === 'L' ? amount * 1000 : amount, perUnit: perUnit(material), system }) ?? []
  })
  const water = bleedLitres > 0 && waterLitres > 0 ? waterDose(situation, row.source, { code: 'water', litres: waterLitres, says: say('waterToLevel'), how: [say('waterOnlyToMark')] }) : undefined
  return [
    ...(above(bleedLitres, 0) ? [bleedRemedy(situation, row, system)] : []),
    ...doses,
    ...(water ? [water] : []),
    ...(obstacles.length ? [act(situation, row, { code: 'look', id: 'look:notAllReached', says: say('notAllReached', { obstacles: obstacles.map(({ kind, name }) => (name ? `${kind}:${name}` : kind)) }) })] : []),
  ]
}

interface System {
  bleedLitres: number
  afterLitres: number
  constituents: readonly Judged[]
}

/** Where a run-off goes: silver-bearing baths to recovery, never to the drain; the rest by the site's permitted route. */
export const destinationOf = ({ station }: Pick<Situation, 'station'>): 'silverRecovery' | 'permittedRoute' => (isFixing(station) ? 'silverRecovery' : 'permittedRoute')

const bleedRemedy = (situation: Situation, row: Row, { bleedLitres, constituents }: System): Remedy => {
  const { bath } = situation
  const tooStrong = constituents.filter(({ gramsPerLitre, aimGramsPerLitre, toleranceGramsPerLitre }) => above(gramsPerLitre, aimGramsPerLitre + toleranceGramsPerLitre))
  return act(situation, row, {
    code: 'bleed',
    says: say('bleedAndRefill', { destination: destinationOf(situation), constituents: tooStrong.map(({ name }) => name) }),
    how: [say('bleedWellMixed'), say('logRunOff', { destination: destinationOf(situation) }), say('cautionOfBath', { card: isDeveloper(situation.station) ? 'working-developer' : 'used-fixing-bath' })],
    settings: [
      {
        quantity: 'bleed', to: bleedLitres, unit: 'L',
        working: {
          calculation: bathCorrect.id,
          inputs: { litres: bath!.litres, constituents: tooStrong },
          result: { bleedLitres },
          steps: [
            ...tooStrong.map(({ name, gramsPerLitre, aimGramsPerLitre }): Step => ({ says: `${name}: share to run off`, formula: '1 − aim ÷ found', value: 1 - aimGramsPerLitre / gramsPerLitre, unit: '1' })),
            { says: 'to run off, well mixed', formula: 'share × litres', value: bleedLitres, unit: 'L' },
          ],
        },
      },
    ],
    ...(bleedLitres > freelyBledShare * (bath?.litres ?? 0) ? { approval: 'supervisor' as const } : {}),
  })
}

/**
 * Silver that is too strong, where the cell cannot keep up: so much run off to recovery, and as much fixing bath without silver in its place. The
 * cell and the replenishment come before it.
 */
export const bleedSilver: Builder = (situation, row) => {
  const { bath, check, value } = situation
  if (!bath || check.kind !== 'reading' || value === undefined) return []
  const silver: Judged = { name: 'silver', gramsPerLitre: value, aimGramsPerLitre: check.limits.aim, toleranceGramsPerLitre: 0 }
  const made = worked(bathCorrect, { litres: bath.litres, headroomLitres: 0, constituents: [silver], materials: [] })
  if (!made || !above(made.result.bleedLitres, 0)) return []
  const remedy = bleedRemedy(situation, row, { bleedLitres: made.result.bleedLitres, afterLitres: made.result.afterLitres, constituents: [silver] })
  return [{ ...remedy, how: [say('cellComesFirst'), ...remedy.how, say('refillWithFixing')] }]
}

/** One add of the correction. Its working speaks of itself alone: the amounts of the others stay behind their own cautions. */
const addRemedy = (
  situation: Situation,
  row: Row,
  { material, whole, perUnit, system }: { material: Material; whole: number; perUnit: number; system: System },
): Remedy | undefined => {
  const { exception, mark, check, bath, station } = situation
  const constituent = system.constituents.find(({ name }) => name === material.substance)!
  const left = constituent.gramsPerLitre * (bath!.litres - system.bleedLitres)
  const isRead = check.kind === 'reading' && check.of === material.substance
  const remedy = doseRemedy(situation, material, {
    code: 'constituent',
    says: say('constituentDose', { material: material.id, substance: material.substance }),
    how: [...(material.substance === 'metol' ? [say('metolFirst')] : []), say(isFixing(station) ? 'solutionOnly' : 'dissolveOutside'), say('atReturn')],
    wait: 'titration',
    source: row.source,
    compute: (factor) => ({
      whole,
      firstShare: 1,
      ...(isRead
        ? { predicts: { quantity: 'concentration', from: constituent.gramsPerLitre, after: (amount: number) => (left + amount * perUnit) / system.afterLitres } }
        : {}),
      working: {
        calculation: bathCorrect.id,
        inputs: { litres: bath!.litres, bleedLitres: system.bleedLitres, constituent, gramsPerUnit: perUnit, responseFactor: factor },
        result: { amount: whole / factor, unit: material.unit },
        steps: [
          { says: `${material.substance} found`, value: constituent.gramsPerLitre, unit: 'g/L' },
          { says: 'aim', value: constituent.aimGramsPerLitre, unit: 'g/L' },
          { says: 'left in the bath after the bleed', formula: 'found × (litres − bleed)', value: left, unit: 'g' },
          { says: 'volume at the end', value: system.afterLitres, unit: 'L' },
          { says: `what 1 ${material.unit} of the material brings`, value: perUnit, unit: 'g' },
          { says: 'response this bath has shown before', formula: 'observed ÷ predicted change', value: factor, unit: '1' },
          { says: 'amount, with the whole bath as one system', formula: 'least that brings every constituent within its tolerance ÷ response', value: whole / factor, unit: material.unit },
        ],
      },
    }),
  })
  const isDone = exception.doses.some((dose) => dose.material === material.id && dose.time > mark.time)
  if (!remedy || !isDone) return remedy
  const { id, code, says, how, source } = remedy
  return { id, code, says, how, source, exception: exception.id, station: station.id, done: true }
}
