import canonicalize from 'canonicalize'

/** What canonical JSON (RFC 8785) cannot carry unchanged between two machines. */
export class NotCanonical extends Error {
  constructor(
    readonly path: string,
    readonly why: 'notFinite' | 'unsafeInteger' | 'loneSurrogate' | 'tooDeep' | 'notJson' | 'forbiddenName',
  ) {
    super(`${why} at ${path}`)
    this.name = 'NotCanonical'
  }
}

/** An entry nests no deeper than this: in a push, four levels further in, it must stay within what the server reads. */
const deepest = 20
const loneSurrogate = /[\uD800-\uDBFF](?![\uDC00-\uDFFF])|(?<![\uD800-\uDBFF])[\uDC00-\uDFFF]/

const check = (value: unknown, path: string, depth: number): void => {
  if (depth > deepest) throw new NotCanonical(path, 'tooDeep')
  if (value === null || typeof value === 'boolean') return
  if (typeof value === 'string') {
    if (loneSurrogate.test(value)) throw new NotCanonical(path, 'loneSurrogate')
    return
  }
  if (typeof value === 'number') {
    if (!Number.isFinite(value)) throw new NotCanonical(path, 'notFinite')
    if (Number.isInteger(value) && !Number.isSafeInteger(value)) throw new NotCanonical(path, 'unsafeInteger')
    return
  }
  if (typeof value !== 'object') throw new NotCanonical(path, 'notJson')
  for (const [key, inner] of Object.entries(value)) {
    if (inner === undefined) continue
    if (loneSurrogate.test(key)) throw new NotCanonical(path, 'loneSurrogate')
    // Whoever copies properties would set a prototype with it, so no border lets it through.
    if (key === '__proto__') throw new NotCanonical(path, 'forbiddenName')
    check(inner, `${path}.${key}`, depth + 1)
  }
}

/** The canonical text of a JSON value; properties that are undefined are left out. Throws `NotCanonical`. */
export const canonical = (value: unknown): string => {
  check(value, '$', 0)
  return canonicalize(value)!
}
