import type { CutName } from './cut-outs.ts'
import type { Recognised, Symbol } from './recognised.ts'

/** What one pass read. */
export interface Pass {
  cut: CutName
  text: string
  symbols: Symbol[]
  /** The weakest symbol's confidence, 0 to 1; 0 when nothing was read. */
  confidence: number
}

export const passOf = (cut: CutName, { symbols }: Recognised): Pass => ({
  cut,
  text: symbols.map((symbol) => symbol.text).join(''),
  symbols,
  confidence: symbols.reduce((least, symbol) => Math.min(least, symbol.confidence), symbols.length > 0 ? 1 : 0),
})

/** A number as meters show it: a minus or none, at most one point, figures. */
export const isNumber = (text: string): boolean => /^-?(\d+\.?\d*|\.\d+)$/.test(text) && /\d$/.test(text)

/** What the model says for any glyph that is no figure. */
export const letterMark = 'x'

/** At least half of it letters. */
export const isWord = (text: string): boolean => text !== '' && 2 * [...text].filter((glyph) => glyph === letterMark).length >= text.length

export interface Vote {
  text: string
  /** How many passes read exactly this. */
  agreeing: number
  /** The weakest confidence among the passes that agree. */
  confidence: number
  /** The winner's symbols, for marking the doubtful one. */
  symbols: Symbol[]
}

/**
 * The number most passes read; between equals the one that the geometry also reads, then the surer one. Only numbers can win: null when
 * no pass read one. `favoured` adds half a voice and never makes a number that no pass read.
 */
export const vote = (passes: readonly Pass[], favoured: string | null): Vote | null => {
  const candidates = new Map<string, Pass[]>()
  for (const pass of passes) if (isNumber(pass.text)) candidates.set(pass.text, [...(candidates.get(pass.text) ?? []), pass])
  let best: { text: string; passes: Pass[]; voices: number } | null = null
  for (const [text, agreeing] of candidates) {
    const surest = Math.max(...agreeing.map((pass) => pass.confidence))
    const voices = agreeing.length + (text === favoured ? 0.5 : 0) + 0.4 * surest
    if (!best || voices > best.voices) best = { text, passes: agreeing, voices }
  }
  if (!best) return null
  const surest = best.passes.reduce((one, other) => (other.confidence > one.confidence ? other : one))
  return { text: best.text, agreeing: best.passes.length, confidence: Math.min(...best.passes.map((pass) => pass.confidence)), symbols: surest.symbols }
}
