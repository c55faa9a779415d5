import { useEffect, useState } from 'preact/hooks'
import type { SayInWords } from '../../plan/in-words.ts'
import { useApp } from '../app-context.ts'
import { sayIn } from '../words/plan-names.ts'

/** How a typical machine is said in the language of this phone; in English until that has come. */
export const useNames = (): SayInWords => {
  const { language } = useApp()
  const [say, setSay] = useState<SayInWords>(() => (english: string) => english)
  useEffect(() => void sayIn(language.value, 'typical').then((it) => setSay(() => it)), [language.value])
  return say
}
