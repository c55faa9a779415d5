/** One sentence of a card. Its key, behind the card's id, names it in a translation file and in the record of what was held to confirm. */
export interface CardLine {
  key: string
  says: string
  /** Where this line comes from, if not from what the card names as its source. */
  source?: string
  /** Written by the laboratory itself. */
  isOwn?: true
}

/** Something that this must never meet, and what comes of it. */
export interface NeverLine extends CardLine {
  with: string
  /** Result as in the table of pairs: `sulfurDioxide`, `heat`. */
  result: string
}

export interface ExposureLimit {
  value: string
  source: string
}

export interface Ghs {
  /** UN codes, GHS01 to GHS09. */
  pictograms: readonly string[]
  signal: 'Danger' | 'Warning' | 'none' | 'supplierVaries'
  /** Codes as text: revisions of the UN's list rename and join them, and labels in use carry old ones beside new ones. */
  h: readonly string[]
  p: readonly string[]
  /** Statements of one region that are not in the UN's list (EUH…), shown apart from it. */
  regional: readonly string[]
}

/**
 * A caution, as it is read before an amount is shown. Starting text in our own words: the supplier's safety data sheet, the label,
 * local codes and licensed or trained persons come first, and every screen that shows a card says so.
 */
export interface CautionCard {
  id: string
  /** Raised with every change of a sentence or a code; the record keeps which version was read. */
  version: number
  kind: 'chemical' | 'mixture' | 'gas' | 'operation'
  /** The whole card is the laboratory's own. */
  isOwn?: true
  name: string
  cas?: string
  use: string
  /** Substance keys of the calculations that this card is for, so that a check can prove that each has one. */
  substances: readonly string[]
  ghs: Ghs
  /** Not to be used at all: withdrawn or forbidden. Said before anything else. */
  banned?: CardLine
  wear: readonly CardLine[]
  ventilation: readonly CardLine[]
  never: readonly NeverLine[]
  firstAid: readonly CardLine[]
  spill: readonly CardLine[]
  storage: readonly CardLine[]
  exposureLimits: readonly ExposureLimit[]
  /** Keys of the one or two lines that are held to confirm, the deadlier first. */
  deadliest: readonly [string] | readonly [string, string]
  /** The amount stays hidden until the card was confirmed. Where it is false the card stands beside the amount. */
  gated: boolean
  source: string
}

export type LineSection = 'wear' | 'ventilation' | 'never' | 'firstAid' | 'spill' | 'storage'
export const sections: readonly LineSection[] = ['never', 'wear', 'ventilation', 'firstAid', 'spill', 'storage']

export const linesOf = (card: CautionCard): CardLine[] => [
  ...(card.banned ? [card.banned] : []),
  ...sections.flatMap((section): readonly CardLine[] => card[section]),
]

/** The line that a key of `deadliest` names. */
export const lineOf = (card: CautionCard, key: string): CardLine => {
  const line = linesOf(card).find((it) => it.key === key)
  if (!line) throw new Error(`the card ${card.id} has no line ${key}`)
  return line
}
