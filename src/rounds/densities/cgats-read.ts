import { CgatsFault, identifier, preambleKeywords, tokensOf, type CgatsProblem, type Token } from './cgats-words.ts'

export interface CgatsTable {
  /** What stood before the table, in order; later tables have what was said since the one before. */
  preamble: { keyword: string; value: string; line: number }[]
  fields: string[]
  sets: Token[][]
}

export interface CgatsFile {
  identifier: string
  tables: CgatsTable[]
  /** Accepted, and told: the file is not quite as the standard has it. */
  notices: { code: 'endDataMissing'; line: number }[]
}

export type CgatsRead = { ok: true; file: CgatsFile } | { ok: false; problem: CgatsProblem }

/**
 * Reads the text form of CGATS.17 / ISO 28178, strictly: counts that are announced must hold, keywords that the standard does not know must have been
 * announced, and every problem names its line. Structure after public descriptions and a general-purpose library; the standard itself was not seen.
 *
 * One thing is forgiven with a notice: END_DATA missing at the end of the file, where the counts hold.
 */
export const readCgats = (text: string): CgatsRead => {
  try {
    return { ok: true, file: new Reader(text).read() }
  } catch (thrown) {
    if (thrown instanceof CgatsFault) return { ok: false, problem: thrown.problem }
    throw thrown
  }
}

class Reader {
  readonly #lines: string[]
  #at = 0
  readonly #announced = new Set<string>()
  readonly #notices: CgatsFile['notices'] = []

  constructor(text: string) {
    this.#lines = text.replace(/^\uFEFF/, '').split(/\r\n|\n|\r/)
  }

  read(): CgatsFile {
    const first = (this.#lines[0] ?? '').trim()
    if (!identifier.test(first)) throw new CgatsFault({ code: 'notCgats', line: 1, found: first.slice(0, 40) })
    this.#at = 1
    const tables: CgatsTable[] = []
    for (let table = this.#table(); table; table = this.#table()) tables.push(table)
    if (tables.length === 0) throw new CgatsFault({ code: 'noTable', line: this.#lines.length })
    return { identifier: first, tables, notices: this.#notices }
  }

  /** The words of the next line that has any. */
  #next(): Token[] | undefined {
    while (this.#at < this.#lines.length) {
      const tokens = tokensOf(this.#lines[this.#at]!, ++this.#at)
      if (tokens.length) return tokens
    }
    return undefined
  }

  #table(): CgatsTable | undefined {
    const preamble: CgatsTable['preamble'] = []
    const counts: { NUMBER_OF_FIELDS?: number; NUMBER_OF_SETS?: number } = {}
    let fields: string[] | undefined
    for (let tokens = this.#next(); tokens; tokens = this.#next()) {
      const head = tokens[0]!
      const keyword = head.text.toUpperCase()
      switch (keyword) {
        case 'KEYWORD':
          this.#announced.add(this.#value(tokens).toUpperCase())
          break
        case 'NUMBER_OF_FIELDS':
        case 'NUMBER_OF_SETS':
          counts[keyword] = this.#count(tokens)
          break
        case 'BEGIN_DATA_FORMAT':
          fields = this.#fields(tokens)
          break
        case 'BEGIN_DATA': {
          if (!fields) throw new CgatsFault({ code: 'keywordMissing', keyword: 'BEGIN_DATA_FORMAT', line: head.line })
          const fieldCount = this.#must(counts.NUMBER_OF_FIELDS, 'NUMBER_OF_FIELDS', head.line)
          if (fieldCount !== fields.length) throw new CgatsFault({ code: 'fieldCount', announced: fieldCount, found: fields.length, line: head.line })
          return { preamble, fields, sets: this.#sets(tokens, fieldCount, this.#must(counts.NUMBER_OF_SETS, 'NUMBER_OF_SETS', head.line)) }
        }
        default:
          if (head.quoted || (!preambleKeywords.has(keyword) && !this.#announced.has(keyword))) throw new CgatsFault({ code: 'unknownKeyword', keyword: head.text.slice(0, 40), line: head.line })
          preamble.push({ keyword, value: this.#value(tokens), line: head.line })
      }
    }
    if (fields) throw new CgatsFault({ code: 'keywordMissing', keyword: 'BEGIN_DATA', line: this.#lines.length })
    return undefined
  }

  #value([head, value, more]: Token[]): string {
    if (!value) throw new CgatsFault({ code: 'noValue', keyword: head!.text, line: head!.line })
    if (more) throw new CgatsFault({ code: 'tooManyValues', keyword: head!.text, line: head!.line })
    return value.text
  }

  #count(tokens: Token[]): number {
    const found = this.#value(tokens)
    if (!/^\d{1,6}$/.test(found)) throw new CgatsFault({ code: 'notACount', keyword: tokens[0]!.text, found, line: tokens[0]!.line })
    return Number(found)
  }

  #must(count: number | undefined, keyword: string, line: number): number {
    if (count === undefined) throw new CgatsFault({ code: 'keywordMissing', keyword, line })
    return count
  }

  /** Everything from a BEGIN to its END, whatever the lines. The END itself is optional only at the end of the file, where the caller allows it. */
  #until(end: string, [head, ...first]: Token[]): { tokens: Token[]; isEnded: boolean } {
    const tokens: Token[] = []
    for (let line: Token[] | undefined = first; line; line = this.#next())
      for (const [index, token] of line.entries()) {
        if (!token.quoted && token.text.toUpperCase() === end) {
          if (index + 1 < line.length) throw new CgatsFault({ code: 'tooManyValues', keyword: end, line: token.line })
          return { tokens, isEnded: true }
        }
        if (!token.quoted && /^(BEGIN|END)_DATA(_FORMAT)?$/i.test(token.text)) throw new CgatsFault({ code: 'unended', keyword: head!.text, line: token.line })
        tokens.push(token)
      }
    return { tokens, isEnded: false }
  }

  #fields(tokens: Token[]): string[] {
    const { tokens: found, isEnded } = this.#until('END_DATA_FORMAT', tokens)
    if (!isEnded) throw new CgatsFault({ code: 'unended', keyword: 'BEGIN_DATA_FORMAT', line: tokens[0]!.line })
    const fields: string[] = []
    for (const { text, line } of found) {
      const field = text.toUpperCase()
      if (fields.includes(field)) throw new CgatsFault({ code: 'fieldTwice', field, line })
      fields.push(field)
    }
    return fields
  }

  #sets(begin: Token[], fields: number, announced: number): Token[][] {
    const { tokens, isEnded } = this.#until('END_DATA', begin)
    const line = tokens.at(-1)?.line ?? begin[0]!.line
    const found = Math.floor(tokens.length / fields)
    const left = tokens.length % fields
    if (found !== announced || left) throw new CgatsFault({ code: 'setCount', announced, found, left, line })
    if (!isEnded) this.#notices.push({ code: 'endDataMissing', line: this.#lines.length })
    return Array.from({ length: announced }, (_, index) => tokens.slice(index * fields, (index + 1) * fields))
  }
}
