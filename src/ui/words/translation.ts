/**
 * The words of another language: the same tree, in which anything may still be missing and is then said in English. Lists are translated whole
 * or not at all: half a list would put the wrong sentence beside a number.
 */
export type Translation<T> = T extends string
  ? string
  : T extends (...told: infer A) => infer R
    ? (...told: A) => Said<R>
    : T extends readonly (infer E)[]
      ? readonly Translation<E>[]
      : { readonly [K in keyof T]?: Translation<T[K]> }

/** What a function of the words gives back: nothing in it may be missing. */
type Said<R> = R extends string ? string : R

const isTree = (it: unknown): it is Readonly<Record<string, unknown>> => typeof it === 'object' && it !== null && !Array.isArray(it)

/** English with everything replaced that the translation has. */
export const translatedWords = <T>(english: T, translation: Translation<T>): T => merged(english, translation) as T

const merged = (english: unknown, translation: unknown): unknown => {
  if (!isTree(english) || !isTree(translation)) return translation ?? english
  return { ...english, ...Object.fromEntries(Object.entries(translation).map(([key, it]) => [key, merged(english[key], it)])) }
}
