import { factsOf, type Substance } from '../substances.ts'

/** A step of a formula as the rules of order see it. */
export interface Listed {
  substance: Substance
  /** Share of all the formula’s sulfite that this step brings, where it is a sulfite; a pinch may go in before metol. */
  sulfiteShare: number
}

const thiosulfates: readonly Substance[] = ['sodiumThiosulfate', 'ammoniumThiosulfate']
const alums: readonly Substance[] = ['potassiumAlum', 'potassiumChromeAlum']
const neutralSulfites: readonly Substance[] = ['sodiumSulfite', 'potassiumSulfite']
const acidSulfites: readonly Substance[] = ['sodiumBisulfite', 'sodiumMetabisulfite', 'potassiumMetabisulfite']

export const isThiosulfate = (substance: Substance): boolean => thiosulfates.includes(substance)
export const isAlum = (substance: Substance): boolean => alums.includes(substance)
export const isSulfite = (substance: Substance): boolean => neutralSulfites.includes(substance) || acidSulfites.includes(substance)
/** Boric acid is too weak to free sulfur or to keep alum dissolved, and does not count. */
export const isAcid = (substance: Substance): boolean => ['acid', 'strongAcid'].includes(factsOf(substance).nature) || acidSulfites.includes(substance)

/** A sulfite step of at most this share of the formula’s sulfite is a pinch: common practice, no source. */
const pinch = 0.1

const isBulkSulfite = ({ substance, sulfiteShare }: Listed): boolean => neutralSulfites.includes(substance) && sulfiteShare > pinch

/** Why one substance must be dissolved before another; the first rule that speaks about a pair decides. */
interface Rule {
  first: (step: Listed) => boolean
  then: (step: Listed) => boolean
  /** Only where the formula holds thiosulfate. */
  inFixingBath?: true
  because: string
}

/**
 * Thiosulfate, then sulfite, then acid, alum last: studio periodicals of 1916 and 1918 and Trans. SMPE 1929, p. 400.
 * Metol before the bulk of the sulfite, hydroquinone after it: common practice, no source.
 */
const rules: readonly Rule[] = [
  { first: (a) => !isAlum(a.substance), then: (b) => isAlum(b.substance), because: 'alum goes last: on sulfite without acid it throws down aluminium sulfite sludge' },
  {
    first: (a) => neutralSulfites.includes(a.substance),
    then: (b) => isAcid(b.substance),
    inFixingBath: true,
    because: 'sulfite before acid: acid alone frees sulfur and sulfur dioxide from thiosulfate',
  },
  { first: (a) => isThiosulfate(a.substance), then: (b) => isAcid(b.substance), inFixingBath: true, because: 'thiosulfate fully dissolved before acid: solid thiosulfate in acid frees sulfur' },
  {
    first: (a) => acidSulfites.includes(a.substance),
    then: (b) => ['acid', 'strongAcid'].includes(factsOf(b.substance).nature),
    inFixingBath: true,
    because: 'sulfite before acid: acid alone frees sulfur and sulfur dioxide from thiosulfate',
  },
  { first: (a) => isThiosulfate(a.substance), then: (b) => isSulfite(b.substance), inFixingBath: true, because: 'thiosulfate fully dissolved, then sulfite' },
  { first: (a) => a.substance === 'metol', then: isBulkSulfite, because: 'metol before the bulk of the sulfite, in which it dissolves poorly' },
  { first: isBulkSulfite, then: (b) => b.substance === 'hydroquinone', because: 'hydroquinone after sulfite, which keeps air from it' },
]

export interface Placed {
  /** Place in the formula as given. */
  index: number
  /** Set where the step had to wait for one that the formula lists later. */
  waitedFor?: { index: number; because: string }
}

/** The formula’s own order, changed only where a rule would be broken: a step waits until everything that must come before it is in. */
export const safeOrder = (steps: readonly Listed[]): Placed[] => {
  const fixing = steps.some(({ substance }) => isThiosulfate(substance))
  const reason = (first: Listed, then: Listed): string | undefined => rules.find((rule) => (fixing || !rule.inFixingBath) && rule.first(first) && rule.then(then))?.because
  const waiting = steps.map((_, index) => index)
  const waits = new Map<number, { index: number; because: string }>()
  const placed: Placed[] = []
  while (waiting.length > 0) {
    const next = waiting.find((candidate) =>
      waiting.every((other) => {
        const because = other === candidate ? undefined : reason(steps[other]!, steps[candidate]!)
        if (because !== undefined && other > candidate) waits.set(candidate, { index: other, because })
        return because === undefined
      }),
    )
    if (next === undefined) throw new Error('the rules of order contradict each other')
    waiting.splice(waiting.indexOf(next), 1)
    const waitedFor = waits.get(next)
    placed.push(waitedFor ? { index: next, waitedFor } : { index: next })
  }
  return placed
}
