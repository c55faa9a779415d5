import { isObject, sameValue } from './same-value.ts'

/** One difference between two plans, small enough to be read as a line. */
export interface PlanChange {
  /** Names of fields, and in a list the id of the entry: `['checks', 'neg-1-fix-ph', 'limits', 'actionHigh']`. */
  path: readonly string[]
  /** `order`: the same entries stand in another order; before and after are their ids. */
  kind: 'added' | 'removed' | 'changed' | 'order'
  before?: unknown
  after?: unknown
}

/** By what an entry of a list is known: its id; constituents and steps of a mix by their substance, figures by their name. */
export const keyOfEntry = (entry: unknown): string | undefined => {
  if (!isObject(entry)) return undefined
  for (const key of ['id', 'figure', 'substance', 'who'] as const) if (typeof entry[key] === 'string') return entry[key]
  return undefined
}

/** The keys of a list's entries, where each has one of its own. */
export const keysOfList = (list: readonly unknown[]): string[] | undefined => {
  const keys = list.map(keyOfEntry)
  return keys.every((key) => key !== undefined) && new Set(keys).size === keys.length ? keys : undefined
}

/** What has to be said of a revision: an entry that came or went is one line, and of one that changed each field is. */
export const planChanges = (before: unknown, after: unknown, path: readonly string[] = []): PlanChange[] => {
  if (sameValue(before, after)) return []
  if (isObject(before) && isObject(after))
    return [...new Set([...Object.keys(before), ...Object.keys(after)])].flatMap((key) => planChanges(before[key], after[key], [...path, key]))
  if (Array.isArray(before) && Array.isArray(after)) {
    const [oldKeys, newKeys] = [keysOfList(before), keysOfList(after)]
    if (oldKeys && newKeys) return listChanges({ entries: before, keys: oldKeys }, { entries: after, keys: newKeys }, path)
  }
  return [{ path, kind: before === undefined ? 'added' : after === undefined ? 'removed' : 'changed', before, after }]
}

interface Keyed {
  entries: readonly unknown[]
  keys: readonly string[]
}

const listChanges = (before: Keyed, after: Keyed, path: readonly string[]): PlanChange[] => {
  const changes: PlanChange[] = []
  before.keys.forEach((key, index) => {
    if (!after.keys.includes(key)) changes.push({ path: [...path, key], kind: 'removed', before: before.entries[index] })
  })
  after.keys.forEach((key, index) => {
    const at = before.keys.indexOf(key)
    if (at < 0) changes.push({ path: [...path, key], kind: 'added', after: after.entries[index] })
    else changes.push(...planChanges(before.entries[at], after.entries[index], [...path, key]))
  })
  const stayed = before.keys.filter((key) => after.keys.includes(key))
  const stand = after.keys.filter((key) => before.keys.includes(key))
  if (!sameValue(stayed, stand)) changes.push({ path, kind: 'order', before: stayed, after: stand })
  return changes
}
