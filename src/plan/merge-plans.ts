import { keysOfList } from './changes.ts'
import { isObject, sameValue } from './same-value.ts'

/**
 * What somebody was editing, brought over onto a revision that came meanwhile: each of the two sets of changes against their common `base` is kept.
 * Where both changed the same field, `mine` stands and the place is named, so that the person sees it before signing.
 */
export const mergePlans = <T>(base: T, mine: T, theirs: T): { plan: T; both: string[] } => {
  const both: string[] = []
  const merged = (old: unknown, own: unknown, other: unknown, path: string): unknown => {
    if (sameValue(own, other) || sameValue(old, other)) return own
    if (sameValue(old, own)) return other
    if (isObject(own) && isObject(other)) {
      const from = isObject(old) ? old : {}
      const kept: Record<string, unknown> = {}
      for (const key of new Set([...Object.keys(other), ...Object.keys(own)])) {
        const value = merged(from[key], own[key], other[key], path ? `${path}.${key}` : key)
        if (value !== undefined) kept[key] = value
      }
      return kept
    }
    if (Array.isArray(own) && Array.isArray(other)) {
      const [ownKeys, otherKeys, oldKeys] = [keysOfList(own), keysOfList(other), keysOfList(Array.isArray(old) ? old : [])]
      if (ownKeys && otherKeys && oldKeys) {
        const from = Array.isArray(old) ? old : []
        const entry = (list: readonly unknown[], keys: readonly string[], key: string): unknown => list[keys.indexOf(key)]
        // In my order; what the others added comes last.
        return [...ownKeys, ...otherKeys.filter((key) => !ownKeys.includes(key))].flatMap((key) => {
          const value = merged(entry(from, oldKeys, key), entry(own, ownKeys, key), entry(other, otherKeys, key), `${path}.${key}`)
          return value === undefined ? [] : [value]
        })
      }
    }
    both.push(path)
    return own
  }
  return { plan: merged(base, mine, theirs, '') as T, both }
}
