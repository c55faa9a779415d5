import { calculation } from '../calculation.ts'
import { above } from '../decimal.ts'
import { noAnswer } from '../refusal.ts'

const longLifeMicrogramsPerSquareCentimetre = 1.4 // ISO 18917 service note: 0.014 g/m² for film kept for ever

/**
 * Thiosulfate left in film, by the colour of methylene blue that it makes: what the film gave off, by the line of the laboratory's own standards, over
 * the area of the piece. Both sides of the base count once: the piece is measured as film.
 */
export const washResidual = calculation({
  id: 'wash.residual',
  title: 'Thiosulfate left in film',
  inputs: {
    absorbance: { kind: 'number', unit: '1', says: 'of the sample, near 665 nm', atLeast: 0, atMost: 4 },
    blankAbsorbance: { kind: 'number', unit: '1', says: 'of unprocessed film or of the reagents alone', atLeast: 0, atMost: 4, preset: 0 },
    microgramsPerAbsorbance: { kind: 'number', unit: 'µg', says: 'thiosulfate in the whole extract for an absorbance of 1, by the standards of the day', above: 0, atMost: 100_000 },
    areaSquareCentimetres: { kind: 'number', unit: 'cm²', says: 'film that was extracted', above: 0, atMost: 10_000 },
  },
  outputs: {
    microgramsPerSquareCentimetre: { kind: 'number', unit: 'µg/cm²', says: 'thiosulfate ion left in the film' },
    gramsPerSquareMetre: { kind: 'number', unit: 'g/m²', says: 'the same' },
    withinLongLife: { kind: 'flag', says: 'at most 1.4 µg/cm²: for film that is to be kept' },
  },
  formula: 'left = (A − A₀) × micrograms for an absorbance of 1 ÷ area',
  source: 'methylene blue method of ISO 18917 in outline (limit seen in a service note; procedure from memory)',
  domain: 'Within the straight part of the standards’ line, and within 14 days of processing: later the thiosulfate has decayed and the test flatters the wash.',
  example: {
    inputs: { absorbance: 0.21, blankAbsorbance: 0.01, microgramsPerAbsorbance: 40, areaSquareCentimetres: 10 },
    result: { microgramsPerSquareCentimetre: 0.8, gramsPerSquareMetre: 0.008, withinLongLife: true },
    tolerance: 1e-9,
    source: 'worked by hand',
  },
  run: ({ absorbance, blankAbsorbance, microgramsPerAbsorbance, areaSquareCentimetres }) => {
    if (above(blankAbsorbance, absorbance)) throw noAnswer('absorbance', absorbance, `at least that of the blank, ${blankAbsorbance}`)
    const left = (Math.max(0, absorbance - blankAbsorbance) * microgramsPerAbsorbance) / areaSquareCentimetres
    return { microgramsPerSquareCentimetre: left, gramsPerSquareMetre: left / 100, withinLongLife: !above(left, longLifeMicrogramsPerSquareCentimetre) }
  },
  steps: ({ absorbance, blankAbsorbance, microgramsPerAbsorbance, areaSquareCentimetres }, { microgramsPerSquareCentimetre }) => [
    { says: 'absorbance less blank', formula: 'A − A₀', value: Math.max(0, absorbance - blankAbsorbance), unit: '1' },
    { says: 'thiosulfate in the extract', formula: `× ${microgramsPerAbsorbance} µg`, value: Math.max(0, absorbance - blankAbsorbance) * microgramsPerAbsorbance, unit: 'µg' },
    { says: 'left in the film', formula: `÷ ${areaSquareCentimetres} cm²`, value: microgramsPerSquareCentimetre, unit: 'µg/cm²' },
    { says: 'for film that is to be kept, at most', value: longLifeMicrogramsPerSquareCentimetre, unit: 'µg/cm²' },
  ],
})
