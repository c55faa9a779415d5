import type { SayInWords } from '../../plan/in-words.ts'
import type { Language } from './language.ts'

/** How that is said with which a plan begins. English where the language has none of it, or where its file cannot be fetched now. */
export const sayIn = async (language: Language, of: 'typical' | 'demo'): Promise<SayInWords> => {
  const found = language === 'es' ? await (of === 'demo' ? import('./es/plan-names/demo.ts') : import('./es/plan-names/typical.ts')).catch(() => undefined) : undefined
  return (english, key) => (key === 'short' ? found?.shorts : found?.names)?.[english] ?? english
}
