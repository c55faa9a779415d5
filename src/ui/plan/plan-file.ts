import { isObject } from '../../plan/same-value.ts'

const sorted = (value: unknown): unknown => {
  if (Array.isArray(value)) return value.map(sorted)
  return isObject(value) ? Object.fromEntries(Object.keys(value).sort().filter((key) => value[key] !== undefined).map((key) => [key, sorted(value[key])])) : value
}

/** A plan as a file: the same plan gives the same bytes, whatever way it came. Keys stand in the order of the alphabet, as in the record. */
export const planFile = (plan: unknown): string => `${JSON.stringify(sorted(plan), null, 2)}\n`

/** What a file holds; undefined where it is not JSON. */
export const readPlanFile = (text: string): unknown => {
  try {
    return JSON.parse(text) as unknown
  } catch (thrown) {
    if (thrown instanceof SyntaxError) return undefined
    throw thrown
  }
}
