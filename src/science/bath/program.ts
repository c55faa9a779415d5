import { negligible, optimum, type Row, type Sum } from './optimum.ts'

export interface Constituent {
  name: string
  gramsPerLitre: number
  aimGramsPerLitre: number
  toleranceGramsPerLitre: number
  /** How much a miss of this constituent counts. */
  weight: number
}

export interface Material {
  name: string
  /** Grams that a litre counts as when the least material is sought; 1 for a material weighed out. */
  gramsPerUnit: number
  /** Grams per unit, in the order of the constituents. */
  provides: readonly number[]
  displacesLitresPerUnit: number
  maxAmount: number
}

export interface Bath {
  litres: number
  /** Litres at the level to which water is filled up. */
  aimLitres: number
  /** Litres that the tank can take at most. */
  mostLitres: number
  maxBleedLitres: number
  constituents: readonly Constituent[]
  materials: readonly Material[]
}

export interface Correction {
  bleedLitres: number
  /** In the order of the materials. */
  amounts: number[]
  /** Weighted miss, in tolerances; 0 when every constituent is within its own. */
  miss: number
}

/**
 * A homogeneous form of the task: every row is a sum of variables, of a constant and of the final volume, `1` and `volume`
 * being names like the others. Which of these two is a number and which a variable is settled when the row is used.
 */
interface Form {
  rows: readonly { sum: Sum; limit: 'atLeast' | 'atMost' }[]
  miss: Sum
  materials: Sum
  unscaled(answer: Sum): Pick<Correction, 'bleedLitres' | 'amounts'>
  finalVolume: Sum
  most: number
}

const one = '1'
const volume = 'volume'
const bleed = 'bleed'
const over = (index: number): string => `over ${index}`
const under = (index: number): string => `under ${index}`
const add = (index: number): string => `add ${index}`

/** A miss is counted in tolerances; where the tolerance is 0, in hundredths of the aim or, for an aim of 0, of what is there. */
const missUnit = ({ aimGramsPerLitre, toleranceGramsPerLitre }: Constituent, scale: number): number =>
  toleranceGramsPerLitre > 0 ? toleranceGramsPerLitre : 0.01 * (aimGramsPerLitre > 0 ? aimGramsPerLitre : scale)

/** Litres in litres at the aim level, grams of a constituent in its own scale, each material in the amount that moves one of these by 1. */
const formOf = (bath: Bath): Form => {
  const { litres, aimLitres, constituents, materials } = bath
  const scales = constituents.map((each) => Math.max(each.gramsPerLitre, each.aimGramsPerLitre + each.toleranceGramsPerLitre) || 1)
  const amounts = materials.map((material) => {
    const strongest = Math.max(material.displacesLitresPerUnit, ...material.provides.map((grams, index) => grams / scales[index]!))
    return strongest > 0 ? aimLitres / strongest : 0
  })
  const costs = materials.map((material, index) => material.gramsPerUnit * amounts[index]!)
  const dearest = Math.max(...costs, Number.MIN_VALUE)
  const present = litres / aimLitres

  const content = constituents.map(({ gramsPerLitre }, index) => {
    const strength = gramsPerLitre / scales[index]!
    const sum: Record<string, number> = { [one]: strength * present, [bleed]: -strength }
    materials.forEach((material, at) => (sum[add(at)] = ((material.provides[index] ?? 0) * amounts[at]!) / scales[index]! / aimLitres))
    return sum
  })
  const rows: Form['rows'] = [
    ...constituents.flatMap(({ aimGramsPerLitre: aim, toleranceGramsPerLitre: tolerance }, index) => [
      { sum: { ...content[index]!, [over(index)]: -1, [volume]: -(aim + tolerance) / scales[index]! }, limit: 'atMost' as const },
      { sum: { ...content[index]!, [under(index)]: 1, [volume]: -Math.max(0, aim - tolerance) / scales[index]! }, limit: 'atLeast' as const },
    ]),
    { sum: { [bleed]: 1, [one]: -Math.min(bath.maxBleedLitres, litres) / aimLitres }, limit: 'atMost' },
    ...materials.flatMap(({ maxAmount }, index) =>
      amounts[index] === 0
        ? [{ sum: { [add(index)]: 1 }, limit: 'atMost' as const }]
        : Number.isFinite(maxAmount)
          ? [{ sum: { [add(index)]: 1, [one]: -maxAmount / amounts[index]! }, limit: 'atMost' as const }]
          : [],
    ),
  ]
  return {
    rows,
    miss: Object.fromEntries(
      constituents.flatMap((each, index) => {
        const weight = (each.weight * scales[index]!) / missUnit(each, scales[index]!)
        return [
          [over(index), weight],
          [under(index), weight],
        ]
      }),
    ),
    materials: Object.fromEntries(costs.map((cost, index) => [add(index), cost / dearest])),
    finalVolume: Object.fromEntries([
      [one, present],
      [bleed, -1],
      ...materials.map((material, index): [string, number] => [add(index), (material.displacesLitresPerUnit * amounts[index]!) / aimLitres]),
    ]),
    most: bath.mostLitres / aimLitres,
    unscaled: (answer) => ({
      bleedLitres: cleaned(answer[bleed]) * aimLitres,
      amounts: amounts.map((amount, index) => cleaned(answer[add(index)]) * amount),
    }),
  }
}

const cleaned = (value = 0): number => (value < negligible ? 0 : value)

/** A sum ≤ or ≥ 0 with some of its names known as numbers. */
const rowOf = ({ sum, limit }: Form['rows'][number], known: Sum): Row => {
  let constant = 0
  const left: Record<string, number> = {}
  for (const [name, coefficient] of Object.entries(sum)) {
    const value = known[name]
    if (value === undefined) left[name] = coefficient
    else constant += coefficient * value
  }
  return limit === 'atMost' ? { sum: left, atMost: -constant } : { sum: left, atLeast: -constant }
}

const valueOf = (sum: Sum, answer: Sum): number => Object.entries(sum).reduce((total, [name, coefficient]) => total + coefficient * (answer[name] ?? 0), 0)

interface Candidate {
  answer: Sum
  miss: number
  materials: number
}

/** How the level may end. The two together are no linear program, each alone is. */
interface Level {
  /** First the least miss; with that, the least bleed; with both, the least material. Undefined where the level cannot end so. */
  best(form: Form): Candidate | undefined
  leastMiss(form: Form): number | undefined
}

/** A miss below this, in tolerances, is rounding. */
const reached = 1e-9

const candidateOf = (form: Form, answer: Sum | undefined, miss: number): Candidate => {
  if (!answer) throw new Error('a bath that cannot even be left as it is')
  return { answer, miss: miss < reached ? 0 : miss, materials: valueOf(form.materials, answer) }
}

/** Water fills up to the aim level: the final volume is known, and so what bleed and adds leave room for is not below 0. */
const atAim: Level = {
  best: (form) => {
    const answer = optimum([form.miss, { [bleed]: 1 }, form.materials], atAimRows(form))
    return candidateOf(form, answer, answer ? valueOf(form.miss, answer) : 0)
  },
  leastMiss: (form) => {
    const answer = optimum([form.miss], atAimRows(form))
    return answer && valueOf(form.miss, answer)
  },
}

const atAimRows = ({ rows, finalVolume }: Form): Row[] => {
  const known = { [one]: 1, [volume]: 1 }
  return [...rows.map((row) => rowOf(row, known)), rowOf({ sum: { ...finalVolume, [volume]: -1 }, limit: 'atMost' }, known)]
}

/** Liquids take the level above the aim, within the headroom, and no water is added. */
const above: Level = {
  best: (form) => {
    const miss = above.leastMiss(form)
    if (miss === undefined) return undefined
    // Zero at the least miss, though miss in grams and volume are both variables (Dinkelbach 1967).
    const beyondLeast = { ...form.miss, [volume]: -miss }
    const rows = [...aboveRows(form, { [one]: 1 }), { sum: { [volume]: 1 }, atLeast: 1, atMost: form.most }]
    return candidateOf(form, optimum([beyondLeast, { [bleed]: 1 }, form.materials], rows), miss)
  },
  // A strength is a quotient by the final volume; divided by it throughout, the program is linear (Charnes and Cooper 1962).
  leastMiss: (form) => {
    const canRise = form.most > 1 + negligible && Object.entries(form.finalVolume).some(([name, litres]) => name !== one && litres > 0)
    if (!canRise) return undefined
    const answer = optimum([form.miss], [...aboveRows(form, { [volume]: 1 }), { sum: { [one]: 1 }, atLeast: 1 / form.most, atMost: 1 }])
    return answer && valueOf(form.miss, answer)
  },
}

const aboveRows = ({ rows, finalVolume }: Form, known: Sum): Row[] => {
  const balance = { ...finalVolume, [volume]: -1 }
  return [...rows, { sum: balance, limit: 'atMost' as const }, { sum: balance, limit: 'atLeast' as const }].map((row) => rowOf(row, known))
}

const levels = [atAim, above]

const isBetter = (candidate: Candidate, other: Candidate): boolean => {
  const differences = [candidate.miss - other.miss, (candidate.answer[bleed] ?? 0) - (other.answer[bleed] ?? 0), candidate.materials - other.materials]
  return (differences.find((difference) => Math.abs(difference) > 1e-8) ?? 0) < 0
}

/**
 * What to bleed and to add so that every constituent comes within its tolerance: of all that do, the one with the least bleed, and
 * of these the one with the least material. Where none does, the one with the least sum of weighted misses.
 *
 * Grams of a constituent after = strength × (litres − bleed) + Σ amount × what it provides; litres after = litres − bleed + Σ amount ×
 * what it displaces + water. Linear programs in lexicographic order.
 */
export const bestCorrection = (bath: Bath): Correction => {
  const form = formOf(bath)
  const [first, ...others] = levels.flatMap((level) => level.best(form) ?? [])
  if (!first) throw new Error('a bath that cannot even be left as it is')
  const best = others.reduce((better, candidate) => (isBetter(candidate, better) ? candidate : better), first)
  return { ...form.unscaled(best.answer), miss: best.miss }
}

/** The least miss alone, for trying out what would help. */
export const leastMiss = (bath: Bath): number => {
  const form = formOf(bath)
  return Math.min(...levels.flatMap((level) => level.leastMiss(form) ?? []))
}
