import type { CautionCard, CardLine, NeverLine } from './card.ts'

/** Sentences of cards in another language, by `card/line`. Lines without a translation stay in English. */
export interface CardTranslation {
  /** BCP 47: `pt`. */
  language: string
  /** The competent person who checked it; without one every translated line is labelled as unchecked. */
  checkedBy?: string
  /** Translations of this version of each card only; a card that has changed since is shown in English. */
  versions: { readonly [card: string]: number }
  says: { readonly [key: string]: string }
}

export interface TranslatedCard {
  card: CautionCard
  language: string
  /** To be said beside the card: no competent person has checked this translation. */
  isUnchecked: boolean
  /** Lines that had no translation and stand in English. */
  untranslated: readonly string[]
}

/** Key under which a translation file names a line: `acetic-acid-28/sulfite`. */
export const lineKey = (card: CautionCard, line: CardLine): string => `${card.id}/${line.key}`

export const translated = (card: CautionCard, translation: CardTranslation): TranslatedCard => {
  if (translation.versions[card.id] !== card.version) return { card, language: 'en', isUnchecked: false, untranslated: [] }
  const untranslated: string[] = []
  const one = <L extends CardLine | NeverLine>(line: L): L => {
    const says = translation.says[lineKey(card, line)]
    if (says === undefined) untranslated.push(line.key)
    return says === undefined ? line : { ...line, says }
  }
  const name = translation.says[`${card.id}/name`]
  return {
    card: {
      ...card,
      ...(name ? { name } : {}),
      ...(card.banned ? { banned: one(card.banned) } : {}),
      wear: card.wear.map(one), ventilation: card.ventilation.map(one), never: card.never.map(one),
      firstAid: card.firstAid.map(one), spill: card.spill.map(one), storage: card.storage.map(one),
    },
    language: translation.language,
    isUnchecked: translation.checkedBy === undefined,
    untranslated,
  }
}
