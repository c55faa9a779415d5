/** What a person reads in a plan and in what is noted by it. All else is ids, units and keys, which mean the same in every language. */
const read: ReadonlySet<string> = new Set(['name', 'short', 'how', 'right', 'wrong', 'calibrates', 'says', 'who', 'number', 'eyewash', 'assembly', 'source', 'text', 'notes', 'reason', 'remark'])

/** `key`: what it is the text of: a short name has less room. */
export type SayInWords = (english: string, key: string) => string

/** A plan, or a part of one, with its sentences said by `say`: in another language, where that knows them. */
export const inWords = <T>(part: T, say: SayInWords): T => said(part, say, '') as T

const said = (part: unknown, say: SayInWords, key: string): unknown => {
  // Sources are listed one after the other.
  if (typeof part === 'string') return key === 'source' ? part.split('; ').map((it) => say(it, key)).join('; ') : read.has(key) ? say(part, key) : part
  if (Array.isArray(part)) return part.map((it) => said(it, say, ''))
  if (typeof part !== 'object' || part === null) return part
  // What a method asks for is named under the keys of its calculation.
  return Object.fromEntries(Object.entries(part).map(([name, it]) => [name, said(it, say, key === 'asks' ? 'name' : name)]))
}
