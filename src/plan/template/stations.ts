import { and, anyState, around, atEach, atLeast, eachDay, eachShift, every, sources, type Typical, type TypicalStation } from './kit.ts'

const { archiveTraining, armyProcessors, colourPrintManual, commonPractice, fixingPaper, fromMemory, hazardsBook, navyBasic, navyControl, navySilver, printFilmSheet } = sources

const thermometer = { name: 'reference thermometer', low: -5, high: 60 }
const meter = { name: 'pH meter', low: 0, high: 14 }
const dipMark = { name: 'dip mark', low: -150, high: 50 }
const burette = { name: 'burette', low: 0, high: 400 }
const flowMeter = { name: 'flow meter', low: 0, high: 300 }

const isNegative = ({ stock }: Typical): boolean => stock === 'negative'

/** As public formulas have them: developer with borax for negatives, with carbonate for prints (open literature, from memory). */
const developerBath = (of: Typical) => ({
  litres: 1000, headroomLitres: 40, circulationLitresPerMinute: 150,
  constituents: isNegative(of)
    ? [
        { substance: 'metol', gramsPerLitre: 1.5 }, { substance: 'sodiumSulfite', gramsPerLitre: 75 }, { substance: 'hydroquinone', gramsPerLitre: 1.5 },
        { substance: 'borax', form: 'decahydrate', gramsPerLitre: 4.5 }, { substance: 'potassiumBromide', gramsPerLitre: 0.7 },
      ]
    : [
        { substance: 'metol', gramsPerLitre: 0.5 }, { substance: 'sodiumSulfite', gramsPerLitre: 40 }, { substance: 'hydroquinone', gramsPerLitre: 3 },
        { substance: 'sodiumCarbonate', gramsPerLitre: 20 }, { substance: 'potassiumBromide', gramsPerLitre: 2.2 },
      ],
})

/** Acid hardening fixing bath, open literature, from memory. */
const fixingBath = () => ({
  litres: 640, headroomLitres: 25, circulationLitresPerMinute: 160,
  constituents: [
    { substance: 'sodiumThiosulfate', form: 'pentahydrate', gramsPerLitre: 240 }, { substance: 'sodiumSulfite', gramsPerLitre: 12 },
    { substance: 'aceticAcid', gramsPerLitre: 13.9 }, { substance: 'boricAcid', gramsPerLitre: 7.5 }, { substance: 'potassiumAlum', form: 'dodecahydrate', gramsPerLitre: 15 },
  ],
})

const waterFlow = (as: string, name: string, aim: number) =>
  ({ as, kind: 'reading', name, quantity: 'flow', unit: 'L/min', step: 0.1, limits: atLeast(aim, aim * 0.95, aim * 0.9), holdBelow: 1, instrument: { ...flowMeter, high: 60 }, schedule: every(60, 15), source: and(printFilmSheet, commonPractice) }) as const

const level = (name: string) =>
  ({ as: 'level', kind: 'reading', name, quantity: 'level', unit: 'mm', step: 5, limits: around(0, 5, 10), instrument: dipMark, schedule: every(60, 15), settleSeconds: 10, how: 'From the mark; below it is minus.', source: and(archiveTraining, commonPractice) }) as const

/** Within a tenth of what the pump gives; common practice, no source. */
const circulation = ({ circulationLitresPerMinute: aim }: { circulationLitresPerMinute: number }) => around(aim, aim * 0.07, aim * 0.1)
const flowMeterFor = ({ circulationLitresPerMinute: aim }: { circulationLitresPerMinute: number }) => ({ ...flowMeter, high: Math.max(flowMeter.high, 2 * aim) })

/** Places of one continuous machine in the order of the film's path, those off the path last. */
export const typicalStations: readonly TypicalStation[] = [
  {
    kind: 'feed', as: 'feed', name: 'Feed', short: 'Feed', minutes: () => 0.1,
    checks: () => [
      { as: 'can', kind: 'look', name: 'First can: label and light', schedule: atEach(10), states: ['startUp', 'changeOver'], immediateHold: true, how: 'Read the label before the lights go out: right process? any light permitted?', right: 'label and process agree', wrong: 'label and process differ', source: archiveTraining },
    ],
  },
  {
    kind: 'developer', as: 'dev', name: 'Developer', short: 'Dev', minutes: (of) => (isNegative(of) ? 6.5 : 3.5), bath: developerBath,
    checks: (of, bath = developerBath(of)) => [
      {
        as: 'temp', kind: 'reading', name: 'Developer temperature', quantity: 'temperature', unit: '°C', step: 0.1, limits: around(21, 0.1, 0.25), holdBelow: 20.5, holdAbove: 21.5, instrument: thermometer,
        schedule: every(30, 10), settleSeconds: 90, states: ['startUp', 'running'], how: 'Same depth every time, away from the heater.', source: and(armyProcessors, colourPrintManual),
      },
      { ...level('Developer level'), pairedWith: 'dev.sg' },
      { as: 'surface', kind: 'look', name: 'Surface movement', schedule: every(60, 15), states: ['startUp', 'running'], immediateHold: true, ...(isNegative(of) ? { darkWork: true } : {}), how: 'From the light side; torch off.', right: 'surface moves', wrong: 'surface still', source: archiveTraining },
      { as: 'flow', kind: 'reading', name: 'Circulation', quantity: 'flow', unit: 'L/min', step: 5, limits: circulation(bath), instrument: flowMeterFor(bath), schedule: every(60, 15), source: and(colourPrintManual, commonPractice) },
      {
        as: 'ph', kind: 'reading', name: 'Developer pH', quantity: 'pH', unit: 'pH', step: 0.01, limits: around(isNegative(of) ? 8.6 : 10.1, 0.03, 0.05), instrument: meter, schedule: eachShift(30), settleSeconds: 90,
        how: 'At bath temperature; it counts when it moves less than 0.01 in 15 s.', source: and(navyControl, fromMemory),
      },
      {
        as: 'sg', kind: 'reading', name: 'Developer specific gravity', quantity: 'specificGravity', unit: 'SG', step: 0.001, limits: around(isNegative(of) ? 1.065 : 1.055, 0.002, 0.003),
        instrument: { name: 'hydrometer', low: 0.99, high: 1.2 }, schedule: eachShift(30), settleSeconds: 600, pairedWith: 'dev.level', how: 'Let the sample stand; read at the foot of the meniscus.', source: and(navyControl, navyBasic, fromMemory),
      },
      { as: 'bromide', kind: 'reading', name: 'Potassium bromide', quantity: 'concentration', of: 'potassiumBromide', unit: 'g/L', step: 0.05, limits: isNegative(of) ? around(0.7, 0.05, 0.1) : around(2.2, 0.1, 0.2), instrument: burette, schedule: eachDay, source: fromMemory },
    ],
  },
  {
    kind: 'rinse', as: 'rinse', name: 'Rinse', short: 'Rinse', minutes: () => 0.5,
    checks: (of) => [waterFlow('flow', 'Rinse flow', isNegative(of) ? 12 : 21)],
  },
  {
    kind: 'fixing', as: 'fix', name: 'Fixing bath', short: 'Fix', minutes: (of) => (isNegative(of) ? 4 : 3), bath: fixingBath,
    checks: () => [
      { as: 'temp', kind: 'reading', name: 'Fixing bath temperature', quantity: 'temperature', unit: '°C', step: 0.1, limits: around(21, 0.5, 1), holdAbove: 27, instrument: thermometer, schedule: every(60, 15), settleSeconds: 60, source: and(colourPrintManual, armyProcessors) },
      {
        as: 'ph', kind: 'reading', name: 'Fixing bath pH', quantity: 'pH', unit: 'pH', step: 0.01, limits: { aim: 4.5, warningLow: 4.2, warningHigh: 4.7, actionLow: 4, actionHigh: 4.8 }, holdBelow: 3.9, holdAbove: 5.2,
        instrument: meter, schedule: every(240, 45), settleSeconds: 90, how: 'At bath temperature; rinse and blot the electrode.', source: fromMemory,
      },
      { as: 'sulfite', kind: 'reading', name: 'Fixing bath sulfite', quantity: 'concentration', of: 'sodiumSulfite', unit: 'g/L', step: 0.5, limits: atLeast(12, 10, 8), instrument: burette, schedule: eachDay, source: fromMemory },
      { as: 'silver', kind: 'reading', name: 'Silver', quantity: 'concentration', of: 'silver', unit: 'g/L', step: 0.1, limits: { aim: 0.8, warningHigh: 1, actionHigh: 2 }, instrument: { name: 'silver test paper', low: 0, high: 10 }, schedule: eachShift(60), settleSeconds: 120, source: and(fromMemory, commonPractice) },
      { as: 'clear', kind: 'look', name: 'Fixing bath clear', schedule: eachShift(60), immediateHold: true, how: 'Glass beaker against a lamp, after five minutes. By eye, never by nose.', right: 'clear', wrong: 'milky, sulfur or white sludge', source: fixingPaper },
      level('Fixing bath level'),
    ],
  },
  {
    kind: 'wash', as: 'wash', name: 'Washes', short: 'Wash', minutes: (of) => (isNegative(of) ? 6 : 5),
    checks: (of) => [
      waterFlow('flow', 'Wash flow', isNegative(of) ? 12 : 21),
      { as: 'temp', kind: 'reading', name: 'Wash temperature', quantity: 'temperature', unit: '°C', step: 0.5, limits: around(21, 2, 3), holdBelow: 16, holdAbove: 26, instrument: thermometer, schedule: every(60, 15), settleSeconds: 60, source: and(colourPrintManual, fromMemory) },
    ],
  },
  {
    kind: 'squeegee', as: 'squeegee', name: 'Air knife', short: 'Knife', minutes: () => 0.05,
    checks: () => [{ as: 'air', kind: 'look', name: 'Air clean', schedule: atEach(15), states: ['startUp'], immediateHold: true, how: 'White paper in the jet for a minute.', right: 'paper stays white and dry', wrong: 'oil or water', source: and(armyProcessors, commonPractice) }],
  },
  {
    kind: 'dryer', as: 'dryer', name: 'Dryer', short: 'Dry', minutes: (of) => (isNegative(of) ? 8 : 6),
    checks: () => [{ as: 'temp', kind: 'reading', name: 'Dryer temperature', quantity: 'temperature', unit: '°C', step: 0.5, limits: around(35, 0.5, 1), holdAbove: 40, instrument: { name: 'dryer probe', low: 0, high: 90 }, schedule: every(30, 10), source: and(printFilmSheet, commonPractice) }],
  },
  {
    kind: 'takeOff', as: 'take-off', name: 'Take-off', short: 'Take', minutes: () => 0.1,
    checks: () => [{ as: 'scratches', kind: 'look', name: 'Scratches, both sides', schedule: every(60, 15), states: ['startUp', 'running'], immediateHold: true, how: 'Oblique light, both sides.', right: 'none', wrong: 'scratched', source: archiveTraining }],
  },
  {
    kind: 'drive', as: 'drive', name: 'Drive', short: 'Drive',
    checks: ({ metresPerMinute }) => [
      {
        as: 'speed', kind: 'reading', name: 'Film speed', quantity: 'speed', unit: 'm/min', step: 0.01, limits: around(metresPerMinute, metresPerMinute * 0.005, metresPerMinute * 0.01), instrument: { name: 'stopwatch on marked leader', low: 1, high: 200 },
        schedule: eachShift(30), settleSeconds: 60, how: 'Time a marked length of leader; do not trust the meter.', source: and(archiveTraining, commonPractice),
      },
      { as: 'tension', kind: 'look', name: 'Tension and film wander', schedule: every(30, 10), immediateHold: true, right: 'even, film central', wrong: 'uneven or wandering', source: archiveTraining },
    ],
  },
  {
    kind: 'strip', as: 'strips', name: 'Control strips', short: 'Strips',
    checks: (of) => [
      {
        as: 'strip', kind: 'strip', name: 'Control strip', schedule: every(120, 30), how: 'Between rolls, so that it sees the same bath. It is read one pass later.',
        figures: [
          { figure: 'baseFog', unit: 'D', step: 0.01, limits: around(isNegative(of) ? 0.25 : 0.05, 0.01, 0.02) },
          { figure: 'gamma', unit: '1', step: 0.01, limits: isNegative(of) ? around(0.65, 0.01, 0.02) : around(2.5, 0.03, 0.05) },
        ],
        source: and(archiveTraining, navyControl, fromMemory),
      },
    ],
  },
  {
    kind: 'silverCell', as: 'silver-cell', name: 'Silver cell', short: 'Silver',
    checks: () => [
      { as: 'current', kind: 'reading', name: 'Silver cell current', quantity: 'current', unit: 'A', step: 0.5, limits: around(40, 2, 4), instrument: { name: 'cell ammeter', low: 0, high: 150 }, schedule: every(60, 20), settleSeconds: 600, source: and(navySilver, commonPractice) },
      { as: 'plate', kind: 'look', name: 'Silver plate', schedule: eachShift(60), immediateHold: true, how: 'A rotten-egg smell means hydrogen sulfide: leave, ventilate, do not sniff again.', right: 'bright, no smell', wrong: 'dark, or a smell', source: navySilver },
    ],
  },
  {
    kind: 'instruments', as: 'instruments', name: 'Instruments', short: 'Instr',
    checks: () => [
      { as: 'meter', kind: 'look', name: 'pH meter calibrated', calibrates: 'pH meter', schedule: every(12 * 60, 120), states: anyState, how: 'Two buffers around the bath; a third within 0.1.', right: 'slope and third buffer good', wrong: 'out', source: commonPractice },
      { as: 'thermometer', kind: 'look', name: 'Thermometer against a known one', calibrates: 'reference thermometer', schedule: every(7 * 24 * 60, 24 * 60), states: anyState, right: 'within 0.1 °C', wrong: 'differs', source: navyBasic },
    ],
  },
  {
    kind: 'room', as: 'safety', name: 'Safety stations', short: 'Safety',
    checks: () => [
      { as: 'eyewash', kind: 'look', name: 'Eyewash and shower', schedule: eachShift(15), states: anyState, safeguard: 'eyewash', how: 'Run both for a moment; once a week for a minute.', right: 'clear water, way free', wrong: 'no water, or blocked', source: and(hazardsBook, commonPractice) },
      { as: 'exhaust', kind: 'look', name: 'Exhaust over tanks and mixing', schedule: eachShift(15), states: anyState, safeguard: 'exhaust', how: 'Smoke tube at the tank edge; never by nose.', right: 'draws away', wrong: 'does not draw', source: and(colourPrintManual, commonPractice) },
    ],
  },
]
