/** Whether two pieces of a plan say the same: what is absent and what is undefined are one, and so are keys in any order. */
export const sameValue = (a: unknown, b: unknown): boolean => {
  if (Object.is(a, b)) return true
  if (Array.isArray(a)) return Array.isArray(b) && a.length === b.length && a.every((it, index) => sameValue(it, b[index]))
  if (!isObject(a) || !isObject(b)) return false
  return [...new Set([...Object.keys(a), ...Object.keys(b)])].every((key) => sameValue(a[key], b[key]))
}

export const isObject = (value: unknown): value is Record<string, unknown> => typeof value === 'object' && value !== null && !Array.isArray(value)
