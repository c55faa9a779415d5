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
/** Everything else stands in quotes as it is. */
const needsCare = /[^ !#-[\]-\uD7FF\uE000-\uFFFF]/

/** One walk through a value, which knows where it is. */
class Writer {
  readonly #path: string[] = ['$']

  #fail(why: NotCanonical['why']): never {
    throw new NotCanonical(this.#path.join('.'), why)
  }

  #quoted(text: string): string {
    if (!needsCare.test(text)) return `"${text}"`
    if (loneSurrogate.test(text)) this.#fail('loneSurrogate')
    return JSON.stringify(text)
  }

  /** ECMAScript's own writing of numbers and strings is the one that RFC 8785 prescribes; keys stand in the order of their UTF-16 code units. */
  write(value: unknown): string {
    if (typeof value === 'string') return this.#quoted(value)
    if (value === null || typeof value === 'boolean') return String(value)
    if (typeof value === 'number') {
      if (!Number.isFinite(value)) this.#fail('notFinite')
      if (Number.isInteger(value) && !Number.isSafeInteger(value)) this.#fail('unsafeInteger')
      return String(value)
    }
    if (typeof value !== 'object' || ('toJSON' in value && typeof value.toJSON === 'function')) this.#fail('notJson')
    return Array.isArray(value) ? `[${value.map((inner, index) => this.#within(String(index), inner)).join(',')}]` : this.#object(value as Record<string, unknown>)
  }

  #object(value: Record<string, unknown>): string {
    let text = ''
    for (const key of Object.keys(value).sort()) {
      const inner = value[key]
      if (inner === undefined) continue
      // Whoever copies properties would set a prototype with it, so no border lets it through.
      if (key === '__proto__') this.#fail('forbiddenName')
      text += `${text ? ',' : ''}${this.#quoted(key)}:${this.#within(key, inner)}`
    }
    return `{${text}}`
  }

  #within(key: string, inner: unknown): string {
    if (this.#path.push(key) > deepest + 1) this.#fail('tooDeep')
    const text = this.write(inner)
    this.#path.pop()
    return text
  }
}

/** The canonical text of a JSON value; properties that are undefined are left out. Throws `NotCanonical`. */
export const canonical = (value: unknown): string => new Writer().write(value)
