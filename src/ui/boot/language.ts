import { signal, type Signal } from '@preact/signals'
import { languages, type Language } from '../words/language.ts'

const key = 'language'

const isOurs = (it: string | null | undefined): it is Language => languages.some((language) => language === it)

/** The one that was chosen on this phone, else the first of the phone's own that the product speaks. */
export const chosenLanguage = (kept: string | null, ofThePhone: readonly string[]): Language =>
  isOurs(kept) ? kept : (ofThePhone.map((tag) => tag.split('-')[0]).find(isOurs) ?? 'en')

export const openLanguage = (): Signal<Language> => {
  let kept: string | null = null
  try {
    kept = localStorage.getItem(key)
  } catch {
    // Storage switched off: the store says so in its own words.
  }
  return signal(chosenLanguage(kept, navigator.languages))
}

export const keepLanguage = (language: Language): void => {
  try {
    localStorage.setItem(key, language)
  } catch {
    // As above.
  }
}
