/** How numbers, times and spans are printed. Pure: the words of a span come from the caller's language. */

/** Decimals that a step of the instrument calls for: 0.01 gives 2, 5 gives 0. */
export const decimalsOf = (step: number): number => {
  const text = String(step)
  const exponent = /e-(\d+)$/.exec(text)?.[1]
  return exponent ? Number(exponent) : (text.split('.')[1]?.length ?? 0)
}

/** With a real minus sign, and nothing rounded away that the instrument shows. */
export const numberText = (value: number, decimals: number): string => value.toFixed(decimals).replace(/^-(?=.*[1-9])/, '−').replace(/^-/, '')

/** No line begins with the point between two names. What is no text stays as it is. */
export const tied = <Said>(said: Said): Said => (typeof said === 'string' ? (said.replaceAll(' · ', '\u00a0· ') as Said) : said)

/** `14:06` in the laboratory's time zone, whatever the phone's. */
export const timeText = (time: number, timeZone: string): string =>
  new Intl.DateTimeFormat('en-GB', { timeZone, hour: '2-digit', minute: '2-digit', hourCycle: 'h23' }).format(time)

/** Day before month, and the month as a word: nobody takes one for the other. */
export const tagOf = (language: string): string => (language === 'en' ? 'en-GB' : language)

export const dateText = (time: number, timeZone: string, language: string): string =>
  new Intl.DateTimeFormat(tagOf(language), { timeZone, weekday: 'short', day: 'numeric', month: 'short' }).format(time)

export const longDateText = (time: number, timeZone: string, language: string): string =>
  new Intl.DateTimeFormat(tagOf(language), { timeZone, weekday: 'long', day: 'numeric', month: 'long', year: 'numeric' }).format(time)
