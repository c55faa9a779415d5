import type { Thing } from './things.ts'

/** What comes of two things that meet. Screens have the sentence. */
export type PairResult =
  | 'sulfurDioxide' | 'sulfur' | 'alumSludge' | 'spatter' | 'heat' | 'froth' | 'fire' | 'explosion' | 'chlorine' | 'chloramines'
  | 'hydrogenSulfide' | 'hydrogenCyanide' | 'explosiveSolid' | 'explosivePeroxide' | 'phosgene' | 'nitrateFire' | 'shock' | 'ammonia'
  | 'hydrogen' | 'bromine' | 'carcinogen' | 'decomposition'

export interface Pair {
  a: Thing
  b: Thing
  result: PairResult
  /** `slowly`: allowed only under the interlocks of a dose, slowly at the return; `never`: under no condition. */
  meet: 'never' | 'slowly'
  source: string
}

const pair = (a: Thing, b: Thing, result: PairResult, source: string, meet: Pair['meet'] = 'never'): Pair => ({ a, b, result, meet, source })

/** Pairs that must never meet; the ones marked `slowly` are the trade's own doses, which the interlocks of a dose guard. */
export const pairs: readonly Pair[] = [
  pair('acid', 'sulfite', 'sulfurDioxide', 'manual of a colour print process, 2006; supplier sheets of a developer replenisher and of a sulfite'),
  pair('diluteAcid', 'sulfite', 'sulfurDioxide', 'the same; slowly into an acid bath: common practice, no source', 'slowly'),
  pair('acid', 'developer', 'sulfurDioxide', 'manual of a colour print process, 2006: sulfite of the developer'),
  pair('diluteAcid', 'developer', 'sulfurDioxide', 'manual of a colour print process, 2006: sulfite of the developer'),
  pair('acid', 'thiosulfate', 'sulfur', 'Crabtree and Hartt 1929, Trans. SMPE XIII no. 38 p. 400; Studio Light 1916'),
  pair('diluteAcid', 'thiosulfate', 'sulfur', 'the same; slowly into a bath with sulfite in limits: common practice, no source', 'slowly'),
  pair('thiosulfate', 'hotSurface', 'sulfur', 'Crabtree and Hartt 1929 p. 400'),
  pair('alum', 'hydroxide', 'alumSludge', 'Crabtree and Hartt 1929 p. 401; Studio Light 1916'),
  pair('alum', 'carbonate', 'alumSludge', 'Crabtree and Hartt 1929 p. 401; Studio Light 1916'),
  pair('alum', 'ammonia', 'alumSludge', 'from memory'),
  pair('concentratedAcid', 'water', 'spatter', 'US Army SS0520; McCann. Acid into water is the only order.'),
  pair('concentratedAcid', 'hydroxide', 'heat', 'from memory'),
  pair('acid', 'hydroxide', 'heat', 'from memory'),
  pair('diluteAcid', 'hydroxide', 'heat', 'from memory'),
  pair('acid', 'carbonate', 'froth', 'from memory'),
  pair('diluteAcid', 'carbonate', 'froth', 'from memory'),
  pair('sulfuricAcid', 'organics', 'fire', 'US Army SS0513 p. 35: film, wood and paper too'),
  pair('aceticAcidGlacial', 'oxidiser', 'explosion', 'US Army SS0513 p. 35'),
  pair('aceticAcidGlacial', 'peroxide', 'explosion', 'US Army SS0513 p. 35'),
  pair('hypochlorite', 'acid', 'chlorine', 'from memory'),
  pair('hypochlorite', 'diluteAcid', 'chlorine', 'from memory'),
  pair('hypochlorite', 'ammonia', 'chloramines', 'from memory'),
  pair('hypochlorite', 'ammoniumSalt', 'chloramines', 'from memory'),
  pair('hypochlorite', 'thiosulfate', 'heat', 'from memory'),
  pair('hypochlorite', 'sulfite', 'heat', 'from memory'),
  pair('hypochlorite', 'organics', 'fire', 'from memory'),
  pair('sulfide', 'acid', 'hydrogenSulfide', 'from memory'),
  pair('sulfide', 'diluteAcid', 'hydrogenSulfide', 'from memory'),
  pair('sulfideScale', 'acid', 'hydrogenSulfide', 'from memory: dark scale of an over-driven silver cell'),
  pair('sulfideScale', 'diluteAcid', 'hydrogenSulfide', 'from memory: dark scale of an over-driven silver cell'),
  pair('ferricyanide', 'strongAcid', 'hydrogenCyanide', 'from memory'),
  pair('dichromate', 'hydrochloricAcid', 'chlorine', 'from memory'),
  pair('permanganate', 'hydrochloricAcid', 'chlorine', 'from memory'),
  pair('permanganate', 'sulfuricAcid', 'explosion', 'from memory'),
  pair('oxidiser', 'organics', 'fire', 'from memory'),
  pair('oxidiser', 'flammableSolvent', 'fire', 'from memory'),
  pair('ammonia', 'iodine', 'explosiveSolid', 'from memory'),
  pair('ammonia', 'silverSolution', 'explosiveSolid', 'from memory: when left standing'),
  pair('ammonia', 'mercury', 'explosiveSolid', 'from memory'),
  pair('ammoniumThiosulfate', 'hydroxide', 'ammonia', 'from memory'),
  pair('ammoniumSalt', 'hydroxide', 'ammonia', 'from memory'),
  pair('bromide', 'oxidiser', 'bromine', 'from memory: strong acid with an oxidiser'),
  pair('formaldehyde', 'hydrochloricAcid', 'carcinogen', 'from memory: bis-chloromethyl ether'),
  pair('formaldehyde', 'oxidiser', 'heat', 'from memory'),
  pair('ether', 'ignition', 'fire', 'ICSC 0355'),
  pair('ether', 'phone', 'fire', 'from memory: an ordinary phone or torch is an ignition source'),
  pair('ether', 'hotSurface', 'fire', 'ICSC 0355'),
  pair('ether', 'air', 'explosivePeroxide', 'GISCHEM sheet; Iowa State University EH&S'),
  pair('ether', 'oxidiser', 'fire', 'from memory'),
  pair('flammableSolvent', 'ignition', 'fire', 'ICSC 0363 and the like'),
  pair('flammableSolvent', 'phone', 'fire', 'from memory: an ordinary phone or torch is an ignition source'),
  pair('flammableSolvent', 'hotSurface', 'fire', 'ICSC 0363 and the like'),
  pair('chlorinatedSolvent', 'ignition', 'phosgene', 'US Army SS0513 p. 35'),
  pair('chlorinatedSolvent', 'hotSurface', 'phosgene', 'US Army SS0513 p. 35'),
  pair('chlorinatedSolvent', 'hydroxide', 'decomposition', 'from memory'),
  pair('chlorinatedSolvent', 'lightMetal', 'explosion', 'from memory'),
  pair('lightMetal', 'hydroxide', 'hydrogen', 'from memory'),
  pair('lightMetal', 'strongAcid', 'hydrogen', 'from memory'),
  pair('nitrateFilm', 'ignition', 'nitrateFire', 'guide to storing nitrate film (2003)'),
  pair('nitrateFilm', 'hotSurface', 'nitrateFire', 'guide to storing nitrate film (2003)'),
  pair('nitrateFilm', 'closedCan', 'nitrateFire', 'guide to storing nitrate film (2003); NFPA 40 excerpt (2001)'),
  pair('nitrateFilm', 'phone', 'nitrateFire', 'common practice, no source'),
  pair('water', 'mains', 'shock', 'US Army SS0520; bus-bars of the silver cell: common practice, no source'),
]

export type Meeting = { may: 'meet' } | { may: 'slowly' | 'never'; result: PairResult; source: string; a: Thing; b: Thing }

const between = (a: Thing, b: Thing): Meeting => {
  const found = pairs.find((it) => (it.a === a && it.b === b) || (it.a === b && it.b === a))
  return found ? { may: found.meet, result: found.result, source: found.source, a: found.a, b: found.b } : { may: 'meet' }
}

const asList = (given: Thing | readonly Thing[]): readonly Thing[] => (typeof given === 'string' ? [given] : given)

/**
 * Whether two things may meet, the same whichever comes first. A material that counts as several things is given as their list:
 * what is said of a dilute acid stands before what is said of any acid.
 *
 * @example mayMeet('hypochlorite', 'acid') // { may: 'never', result: 'chlorine', … }
 */
export const mayMeet = (a: Thing | readonly Thing[], b: Thing | readonly Thing[]): Meeting => {
  const narrowed = (things: readonly Thing[]): readonly Thing[] => (things.includes('diluteAcid') ? things.filter((it) => it !== 'acid') : things)
  const rank = { meet: 0, slowly: 1, never: 2 } as const
  let worst: Meeting = { may: 'meet' }
  // In the order of the table, so that both orders of the arguments name the same pair.
  for (const row of pairs) {
    const left = narrowed(asList(a))
    const right = narrowed(asList(b))
    const meets = (left.includes(row.a) && right.includes(row.b)) || (left.includes(row.b) && right.includes(row.a))
    if (!meets) continue
    const found = between(row.a, row.b)
    if (rank[found.may] > rank[worst.may]) worst = found
  }
  return worst
}
