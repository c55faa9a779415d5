import type { WrittenPlan } from './kit.ts'

type WrittenMachine = WrittenPlan['machines'][number]

/**
 * 100 ft/min. Film paths are chosen so that the times are those of the trade: development 6.5 min, first fixing bath 4 min, washing
 * 6 min, drying 8 min. The baths are made up as public formulas have them (developer with borax, acid hardening fixing bath).
 */
export const negativeMachine: WrittenMachine = {
  id: 'neg-1',
  name: 'Negative machine 1',
  stock: 'negative',
  light: 'panchromatic',
  gaugeMillimetres: 35,
  aimMetresPerMinute: 30.48,
  reserveMetres: 30.48,
  stations: [
    { id: 'neg-1-feed', name: 'Feed', short: 'Feed', kind: 'feed', pathMetres: 3 },
    { id: 'neg-1-elevator', name: 'Elevator', short: 'Elev', kind: 'elevator', pathMetres: 30.48 },
    {
      id: 'neg-1-dev', name: 'Developer', short: 'Dev', kind: 'developer', pathMetres: 198.12,
      bath: {
        litres: 1000, headroomLitres: 40, surfaceSquareMetres: 0.8, circulationLitresPerMinute: 150,
        constituents: [
          { substance: 'metol', gramsPerLitre: 1.5 },
          { substance: 'sodiumSulfite', gramsPerLitre: 75 },
          { substance: 'hydroquinone', gramsPerLitre: 1.5 },
          { substance: 'borax', form: 'decahydrate', gramsPerLitre: 4.5 },
          { substance: 'potassiumBromide', gramsPerLitre: 0.7 },
        ],
      },
    },
    { id: 'neg-1-rinse', name: 'Rinse', short: 'Rinse', kind: 'rinse', pathMetres: 15.24 },
    {
      id: 'neg-1-fix', name: 'Fixing bath 1', short: 'Fix 1', kind: 'fixing', pathMetres: 121.92,
      bath: {
        litres: 640, headroomLitres: 25, surfaceSquareMetres: 0.5, circulationLitresPerMinute: 160,
        constituents: [
          { substance: 'sodiumThiosulfate', form: 'pentahydrate', gramsPerLitre: 240 },
          { substance: 'sodiumSulfite', gramsPerLitre: 12 },
          { substance: 'aceticAcid', gramsPerLitre: 13.9 },
          { substance: 'boricAcid', gramsPerLitre: 7.5 },
          { substance: 'potassiumAlum', form: 'dodecahydrate', gramsPerLitre: 15 },
        ],
      },
    },
    {
      id: 'neg-1-fix-2', name: 'Fixing bath 2', short: 'Fix 2', kind: 'fixing', pathMetres: 60.96,
      bath: {
        litres: 320, headroomLitres: 15, surfaceSquareMetres: 0.3, circulationLitresPerMinute: 80,
        constituents: [
          { substance: 'sodiumThiosulfate', form: 'pentahydrate', gramsPerLitre: 240 },
          { substance: 'sodiumSulfite', gramsPerLitre: 12 },
          { substance: 'aceticAcid', gramsPerLitre: 13.9 },
          { substance: 'boricAcid', gramsPerLitre: 7.5 },
          { substance: 'potassiumAlum', form: 'dodecahydrate', gramsPerLitre: 15 },
        ],
      },
    },
    { id: 'neg-1-wash', name: 'Washes', short: 'Wash', kind: 'wash', pathMetres: 182.88 },
    { id: 'neg-1-squeegee', name: 'Air knife', short: 'Knife', kind: 'squeegee', pathMetres: 1.5 },
    { id: 'neg-1-dryer', name: 'Dryer', short: 'Dry', kind: 'dryer', pathMetres: 243.84 },
    { id: 'neg-1-take-off', name: 'Take-off', short: 'Take', kind: 'takeOff', pathMetres: 3 },
    { id: 'neg-1-drive', name: 'Drive', short: 'Drive', kind: 'drive' },
    { id: 'neg-1-replenisher', name: 'Replenisher tanks', short: 'Replen', kind: 'replenisher' },
    { id: 'neg-1-strips', name: 'Control strips', short: 'Strips', kind: 'strip' },
    { id: 'silver-cell', name: 'Silver cell', short: 'Silver', kind: 'silverCell' },
    { id: 'mixing', name: 'Chemical mixing', short: 'Mixing', kind: 'mixing' },
    { id: 'instruments', name: 'Instruments', short: 'Instr', kind: 'instruments' },
  ],
}

/** 175 ft/min: development 3.5 min, fixing 3 min, washing 5 min, drying 6 min. Developer with carbonate. */
export const positiveMachine: WrittenMachine = {
  id: 'pos-2',
  name: 'Positive machine 2',
  stock: 'positive',
  light: 'blueSensitive',
  gaugeMillimetres: 35,
  aimMetresPerMinute: 53.34,
  reserveMetres: 30.48,
  stations: [
    { id: 'pos-2-feed', name: 'Feed', short: 'Feed', kind: 'feed', pathMetres: 3 },
    {
      id: 'pos-2-dev', name: 'Developer', short: 'Dev', kind: 'developer', pathMetres: 186.69,
      bath: {
        litres: 1200, headroomLitres: 45, surfaceSquareMetres: 0.9, circulationLitresPerMinute: 180,
        constituents: [
          { substance: 'metol', gramsPerLitre: 0.5 },
          { substance: 'sodiumSulfite', gramsPerLitre: 40 },
          { substance: 'hydroquinone', gramsPerLitre: 3 },
          { substance: 'sodiumCarbonate', gramsPerLitre: 20 },
          { substance: 'potassiumBromide', gramsPerLitre: 2.2 },
        ],
      },
    },
    { id: 'pos-2-rinse', name: 'Rinse', short: 'Rinse', kind: 'rinse', pathMetres: 17.78 },
    {
      id: 'pos-2-fix', name: 'Fixing bath', short: 'Fix', kind: 'fixing', pathMetres: 160.02,
      bath: {
        litres: 900, headroomLitres: 35, surfaceSquareMetres: 0.7, circulationLitresPerMinute: 180,
        constituents: [
          { substance: 'sodiumThiosulfate', form: 'pentahydrate', gramsPerLitre: 240 },
          { substance: 'sodiumSulfite', gramsPerLitre: 12 },
          { substance: 'aceticAcid', gramsPerLitre: 13.9 },
          { substance: 'boricAcid', gramsPerLitre: 7.5 },
          { substance: 'potassiumAlum', form: 'dodecahydrate', gramsPerLitre: 15 },
        ],
      },
    },
    { id: 'pos-2-wash', name: 'Washes', short: 'Wash', kind: 'wash', pathMetres: 266.7 },
    { id: 'pos-2-dryer', name: 'Dryer', short: 'Dry', kind: 'dryer', pathMetres: 320.04 },
    { id: 'pos-2-take-off', name: 'Take-off', short: 'Take', kind: 'takeOff', pathMetres: 3 },
    { id: 'pos-2-drive', name: 'Drive', short: 'Drive', kind: 'drive' },
    { id: 'pos-2-replenisher', name: 'Replenisher tanks', short: 'Replen', kind: 'replenisher' },
    { id: 'pos-2-strips', name: 'Control strips', short: 'Strips', kind: 'strip' },
    { id: 'plant', name: 'Plant', short: 'Plant', kind: 'plant' },
    { id: 'safety', name: 'Safety stations', short: 'Safety', kind: 'room' },
    { id: 'drain', name: 'Drain', short: 'Drain', kind: 'effluent' },
  ],
}
