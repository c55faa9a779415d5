/** A short word for a person, as a lab plan has it: `Anna Nowak` becomes `anna-nowak`. */
export const personIdFor = (name: string, taken: ReadonlySet<string>): string => {
  const word =
    name
      .normalize('NFKD')
      .replace(/\p{M}+/gu, '')
      .toLowerCase()
      .replace(/[^a-z0-9]+/g, '-')
      .replace(/^-+|-+$/g, '')
      .slice(0, 40)
      .replace(/-+$/, '') || 'supervisor'
  if (!taken.has(word)) return word
  for (let number = 2; ; number += 1) if (!taken.has(`${word}-${number}`)) return `${word}-${number}`
}
