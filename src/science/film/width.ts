import type { Fields } from '../field.ts'

// Millimetres, new film: [nominal gauge, true width]
const widths: ReadonlyMap<number, number> = new Map([
  [35, 34.975], // SMPTE 139, as an encyclopedia quotes it
  [16, 15.95], // ISO 69, from memory
  [65, 64.97], // ISO 3023, from memory
  [8, 7.975], // ISO 1700, from memory
])

export const gaugeField = {
  gaugeMillimetres: { kind: 'number', unit: 'mm', says: 'gauge of the film', oneOf: [...widths.keys()] },
} as const satisfies Fields

/** True width of new film. Film shrinks with age, by some 0.1 to 0.5 % (from memory). */
export const trueWidthMillimetres = (gaugeMillimetres: number): number => {
  const width = widths.get(gaugeMillimetres)
  if (width === undefined) throw new Error(`no width is known for ${gaugeMillimetres} mm film`)
  return width
}

/**
 * Area of one side: true width × length. Perforations are not taken off: they are about 6.5 % of 35 mm film and 2 % of
 * 16 mm film perforated on one edge (worked out from the size of a perforation, from memory).
 */
export const squareMetresOfFilm = (film: { gaugeMillimetres: number; metres: number }): number =>
  (trueWidthMillimetres(film.gaugeMillimetres) / 1000) * film.metres
