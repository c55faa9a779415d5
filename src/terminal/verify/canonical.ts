/**
 * Canonical JSON (RFC 8785) in its own few lines, apart from what the phones and the server use, so that a fault in theirs shows. ECMAScript's
 * own writing of numbers and strings is the one that the standard prescribes; what is left to do is the order of the keys, by UTF-16 code units.
 *
 * @example canonicalText({ b: 1, a: [true, 'x'] }) // '{"a":[true,"x"],"b":1}'
 */
export const canonicalText = (value: unknown): string => {
  if (Array.isArray(value)) return `[${value.map(canonicalText).join(',')}]`
  if (value === null || typeof value !== 'object') return JSON.stringify(value)
  const members = Object.entries(value).sort(([a], [b]) => (a < b ? -1 : 1))
  return `{${members.map(([key, inner]) => `${JSON.stringify(key)}:${canonicalText(inner)}`).join(',')}}`
}
