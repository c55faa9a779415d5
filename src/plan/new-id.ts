import type { WrittenPlan } from './written-plan.ts'

const longestBase = 40

/** Letters that a decomposition leaves whole. */
const plainLetters: Readonly<Record<string, string>> = { ß: 'ss', æ: 'ae', ø: 'o', œ: 'oe', ł: 'l', đ: 'd' }

/** A name as an id may be spelled: `Fixing bath 1` becomes `fixing-bath-1`. */
export const wordOf = (name: string): string =>
  name
    .toLowerCase()
    .replace(/[ßæøœłđ]/g, (letter) => plainLetters[letter]!)
    .normalize('NFD')
    .replace(/\p{M}/gu, '')
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/-{2,}/g, '-')
    .replace(/^-|-$/g, '')
    .slice(0, longestBase)
    .replace(/-$/, '')

/** Ids that a plan has used, of any part: one word then never stands for two things in a search through the record. */
export const idsOf = (plan: WrittenPlan): Set<string> =>
  new Set([
    ...plan.machines.flatMap(({ id, stations }) => [id, ...stations.map((station) => station.id)]),
    ...[plan.people, plan.shifts, plan.checks, plan.materials, plan.methods, plan.formulas ?? [], plan.cautions ?? []].flatMap((list) => list.map(({ id }) => id)),
  ])

/** An id made from a name that none of the given ones is. `fallback` where the name has no letter of the Latin alphabet. */
export const newId = (name: string, taken: ReadonlySet<string>, fallback: string): string => {
  const base = wordOf(name) || fallback
  // Every object has a `constructor`; ids become keys of objects.
  if (!taken.has(base) && base !== 'constructor') return base
  for (let number = 2; ; number++) if (!taken.has(`${base}-${number}`)) return `${base}-${number}`
}
