import { around, atEach, eachDay, eachShift, every, instruments, look, reading, strip, wedge, type WrittenCheck } from './kit.ts'
import { and, archiveTraining, armyProcessors, colourPrintManual, commonPractice, fixingPaper, fromMemory, navyBasic, navyControl, printFilmSheet, spliceArticle } from './sources.ts'

const feed: WrittenCheck[] = [
  look({
    id: 'neg-1-can', station: 'neg-1-feed', name: 'First can: label and light', schedule: atEach(10), states: ['startUp', 'changeOver'], immediateHold: true,
    how: 'Read the label before the lights go out: right process? any light permitted?', right: 'label and process agree', wrong: 'label and process differ', source: archiveTraining,
  }),
  look({
    id: 'neg-1-alarms', station: 'neg-1-elevator', name: 'Alarms', schedule: atEach(15), states: ['startUp'], immediateHold: true,
    how: 'Try elevator rise, film end, film break and over-heat, one after the other.', right: 'all four work', wrong: 'one does not work', source: archiveTraining,
  }),
  reading({
    id: 'neg-1-reserve', station: 'neg-1-elevator', name: 'Elevator reserve', quantity: 'duration', unit: 's', step: 1,
    limits: { aim: 60, warningLow: 45, actionLow: 30 }, instrument: instruments.stopwatch, schedule: eachShift(60),
    how: 'Reserve on the scale divided by the speed.', source: and(spliceArticle, commonPractice),
  }),
  reading({
    id: 'neg-1-speed', station: 'neg-1-drive', name: 'Film speed', quantity: 'speed', unit: 'm/min', step: 0.01,
    limits: around(30.48, 0.15, 0.3), holdBelow: 29.87, holdAbove: 31.09, instrument: { name: 'stopwatch on marked leader', low: 3, high: 120 },
    schedule: eachShift(30), settleSeconds: 60, how: 'Time 30 m of marked leader; do not trust the meter.', source: and(archiveTraining, commonPractice),
  }),
  look({
    id: 'neg-1-tension', station: 'neg-1-drive', name: 'Tension and film wander', schedule: every(30, 10), immediateHold: true,
    right: 'even, film central', wrong: 'uneven or wandering', source: archiveTraining,
  }),
]

const developer: WrittenCheck[] = [
  reading({
    id: 'neg-1-dev-temp', station: 'neg-1-dev', name: 'Developer temperature', quantity: 'temperature', unit: '°C', step: 0.1,
    limits: around(21, 0.1, 0.25), holdBelow: 20.5, holdAbove: 21.5, instrument: instruments.thermometer, schedule: every(30, 10), settleSeconds: 90,
    states: ['startUp', 'running'], how: 'Same depth every time, away from the heater.', source: and(armyProcessors, colourPrintManual),
  }),
  reading({
    id: 'neg-1-dev-controller', station: 'neg-1-dev', name: 'Controller shows', quantity: 'temperature', unit: '°C', step: 0.1, limits: { aim: 21 },
    instrument: { name: 'temperature controller', low: 0, high: 60 }, schedule: eachShift(35), pairedWith: 'neg-1-dev-temp', pairedWithin: 0.1,
    how: 'Read it together with the thermometer.', source: and(colourPrintManual, navyBasic),
  }),
  reading({
    id: 'neg-1-dev-level', station: 'neg-1-dev', name: 'Developer level', quantity: 'level', unit: 'mm', step: 5, limits: around(0, 5, 10),
    instrument: instruments.dipMark, schedule: every(60, 15), settleSeconds: 10, pairedWith: 'neg-1-dev-sg', how: 'From the mark; below it is minus.', source: and(archiveTraining, commonPractice),
  }),
  look({
    id: 'neg-1-dev-surface', station: 'neg-1-dev', name: 'Surface movement', schedule: every(60, 15), states: ['startUp', 'running'], immediateHold: true, darkWork: true,
    how: 'From the light side; torch off.', right: 'surface moves', wrong: 'surface still', source: archiveTraining,
  }),
  reading({
    id: 'neg-1-dev-flow', station: 'neg-1-dev', name: 'Circulation', quantity: 'flow', unit: 'L/min', step: 5, limits: around(150, 10, 15), holdBelow: 20,
    instrument: { name: 'flow meter', low: 0, high: 300 }, schedule: every(60, 15), source: and(colourPrintManual, commonPractice),
  }),
  reading({
    id: 'neg-1-dev-filter', station: 'neg-1-dev', name: 'Filter pressure drop', quantity: 'pressureDrop', unit: 'kPa', step: 5, limits: { aim: 40, warningHigh: 50, actionHigh: 60 },
    instrument: { name: 'two gauges', low: 0, high: 400 }, schedule: eachShift(60), source: commonPractice,
  }),
  reading({
    id: 'neg-1-dev-ph', station: 'neg-1-dev', name: 'Developer pH', quantity: 'pH', unit: 'pH', step: 0.01, limits: around(8.6, 0.03, 0.05),
    instrument: instruments.meter, schedule: eachShift(30), settleSeconds: 90, how: 'At bath temperature; it counts when it moves less than 0.01 in 15 s.',
    source: and(navyControl, fromMemory),
  }),
  reading({
    id: 'neg-1-dev-sg', station: 'neg-1-dev', method: 'hydrometer', name: 'Developer specific gravity', quantity: 'specificGravity', unit: 'SG', step: 0.001, limits: around(1.065, 0.002, 0.003),
    instrument: instruments.hydrometer, schedule: eachShift(30), settleSeconds: 600, pairedWith: 'neg-1-dev-level', how: 'Let the sample stand; read at the foot of the meniscus.',
    source: and(navyControl, navyBasic, fromMemory),
  }),
  reading({
    id: 'neg-1-dev-bromide', station: 'neg-1-dev', name: 'Potassium bromide', quantity: 'concentration', of: 'potassiumBromide', unit: 'g/L', step: 0.05,
    limits: around(0.7, 0.05, 0.1), instrument: instruments.burette, schedule: eachDay, method: 'bromide', source: fromMemory,
  }),
  reading({
    id: 'neg-1-dev-metol', station: 'neg-1-dev', name: 'Metol', quantity: 'concentration', of: 'metol', unit: 'g/L', step: 0.05,
    limits: around(1.5, 0.1, 0.15), instrument: instruments.burette, schedule: eachDay, method: 'metol', source: fromMemory,
  }),
  reading({
    id: 'neg-1-dev-hydroquinone', station: 'neg-1-dev', name: 'Hydroquinone', quantity: 'concentration', of: 'hydroquinone', unit: 'g/L', step: 0.05,
    limits: around(1.5, 0.1, 0.15), instrument: instruments.burette, schedule: eachDay, method: 'hydroquinone', source: fromMemory,
  }),
  reading({
    id: 'neg-1-dev-sulfite', station: 'neg-1-dev', name: 'Sulfite', quantity: 'concentration', of: 'sodiumSulfite', unit: 'g/L', step: 1,
    limits: { aim: 75, warningLow: 73, warningHigh: 77, actionLow: 71.25, actionHigh: 78.75 }, instrument: instruments.burette, schedule: eachDay, method: 'sulfite', source: fromMemory,
  }),
  reading({
    id: 'neg-1-dev-borax', station: 'neg-1-dev', name: 'Borax', quantity: 'concentration', of: 'borax', unit: 'g/L', step: 0.1,
    limits: { aim: 4.5, warningLow: 4.35, warningHigh: 4.65, actionLow: 4.275, actionHigh: 4.725 }, instrument: instruments.burette, schedule: eachDay, method: 'borax', source: fromMemory,
  }),
  reading({
    id: 'neg-1-rate', station: 'neg-1-replenisher', name: 'Developer replenishment', quantity: 'replenishment', unit: 'L/min', step: 0.01,
    limits: around(0.5, 0.015, 0.025), instrument: { name: 'flow tube', low: 0, high: 5 }, schedule: every(60, 15), settleSeconds: 60,
    how: 'Bucket and watch once in a shift.', source: and(archiveTraining, commonPractice),
  }),
  reading({
    id: 'neg-1-replenisher-left', station: 'neg-1-replenisher', name: 'Replenisher left', quantity: 'volume', unit: 'L', step: 10,
    limits: { aim: 400, warningLow: 120, actionLow: 60 }, holdBelow: 10, instrument: { name: 'sight tube', low: 0, high: 500 }, schedule: every(120, 30),
    how: 'Two hours of running is the least.', source: commonPractice,
  }),
]

const fixing: WrittenCheck[] = [
  reading({
    id: 'neg-1-rinse-flow', station: 'neg-1-rinse', name: 'Rinse flow', quantity: 'flow', unit: 'L/min', step: 0.1,
    limits: { aim: 12, warningLow: 11.4, actionLow: 10.8 }, holdBelow: 1, instrument: { name: 'flow meter', low: 0, high: 60 }, schedule: every(60, 15), source: and(printFilmSheet, commonPractice),
  }),
  reading({
    id: 'neg-1-fix-temp', station: 'neg-1-fix', name: 'Fixing bath temperature', quantity: 'temperature', unit: '°C', step: 0.1,
    limits: around(21, 0.5, 1), holdAbove: 27, instrument: instruments.thermometer, schedule: every(60, 15), settleSeconds: 60, source: and(colourPrintManual, armyProcessors),
  }),
  reading({
    id: 'neg-1-fix-ph', station: 'neg-1-fix', name: 'Fixing bath pH', quantity: 'pH', unit: 'pH', step: 0.01,
    limits: { aim: 4.5, warningLow: 4.2, warningHigh: 4.7, actionLow: 4, actionHigh: 4.8 }, holdBelow: 3.9, holdAbove: 5.2,
    instrument: instruments.meter, schedule: every(240, 45), settleSeconds: 90, how: 'At bath temperature; rinse and blot the electrode.', source: fromMemory,
  }),
  reading({
    id: 'neg-1-fix-sulfite', station: 'neg-1-fix', name: 'Fixing bath sulfite', quantity: 'concentration', of: 'sodiumSulfite', unit: 'g/L', step: 0.5,
    limits: { aim: 12, warningLow: 10, actionLow: 8 }, instrument: instruments.burette, schedule: eachDay, method: 'sulfite-fixing', source: fromMemory,
  }),
  reading({
    id: 'neg-1-fix-thiosulfate', station: 'neg-1-fix', name: 'Thiosulfate', quantity: 'concentration', of: 'sodiumThiosulfate', unit: 'g/L', step: 5,
    limits: around(240, 12, 24), instrument: instruments.burette, schedule: eachDay, method: 'thiosulfate', source: fromMemory,
  }),
  reading({
    id: 'neg-1-fix-silver', station: 'neg-1-fix', method: 'silver-strip', name: 'Silver', quantity: 'concentration', of: 'silver', unit: 'g/L', step: 0.1,
    limits: { aim: 0.8, warningHigh: 1, actionHigh: 2 }, instrument: { name: 'silver test paper', low: 0, high: 10 }, schedule: eachShift(60), settleSeconds: 120, source: and(fromMemory, commonPractice),
  }),
  reading({
    id: 'neg-1-fix-clearing', station: 'neg-1-fix', name: 'Clearing time', quantity: 'duration', unit: 's', step: 5,
    limits: { aim: 45, warningHigh: 75, actionHigh: 90 }, holdAbove: 120, instrument: instruments.stopwatch, schedule: eachShift(60),
    how: 'An undeveloped chip in white light; twice the fresh time at most, never over half the fixing time.', source: navyBasic,
  }),
  look({
    id: 'neg-1-fix-clear', station: 'neg-1-fix', name: 'Fixing bath clear', schedule: eachShift(60), immediateHold: true,
    how: 'Glass beaker against a lamp, after five minutes. By eye, never by nose.', right: 'clear', wrong: 'milky, sulfur or white sludge', source: fixingPaper,
  }),
  reading({
    id: 'neg-1-fix-level', station: 'neg-1-fix', name: 'Fixing bath level', quantity: 'level', unit: 'mm', step: 5, limits: around(0, 5, 10),
    instrument: instruments.dipMark, schedule: every(60, 15), settleSeconds: 10, source: commonPractice,
  }),
]

const afterFixing: WrittenCheck[] = [
  reading({
    id: 'neg-1-wash-flow', station: 'neg-1-wash', name: 'Wash flow', quantity: 'flow', unit: 'L/min', step: 0.1,
    limits: { aim: 12, warningLow: 11.4, actionLow: 10.8 }, holdBelow: 1, instrument: { name: 'flow meter', low: 0, high: 60 }, schedule: every(60, 15), source: and(printFilmSheet, commonPractice),
  }),
  reading({
    id: 'neg-1-wash-temp', station: 'neg-1-wash', name: 'Wash temperature', quantity: 'temperature', unit: '°C', step: 0.5, limits: around(21, 2, 3),
    holdBelow: 16, holdAbove: 26, instrument: instruments.thermometer, schedule: every(60, 15), settleSeconds: 60, pairedWith: 'neg-1-dev-temp', pairedWithin: 3,
    source: and(colourPrintManual, fromMemory),
  }),
  look({
    id: 'neg-1-air', station: 'neg-1-squeegee', name: 'Air clean', schedule: atEach(15), states: ['startUp'], immediateHold: true,
    how: 'White paper in the jet for a minute.', right: 'paper stays white and dry', wrong: 'oil or water', source: and(armyProcessors, commonPractice),
  }),
  reading({
    id: 'neg-1-dryer-temp', station: 'neg-1-dryer', name: 'Dryer temperature', quantity: 'temperature', unit: '°C', step: 0.5, limits: around(35, 0.5, 1), holdAbove: 40,
    instrument: { name: 'dryer probe', low: 0, high: 90 }, schedule: every(30, 10), source: and(printFilmSheet, commonPractice),
  }),
  look({
    id: 'neg-1-scratches', station: 'neg-1-take-off', name: 'Scratches, both sides', schedule: every(60, 15), states: ['startUp', 'running'], immediateHold: true,
    how: 'Oblique light, both sides.', right: 'none', wrong: 'scratched', source: archiveTraining,
  }),
  look({
    id: 'neg-1-standby', station: 'neg-1-dev', name: 'Standing by', schedule: every(60, 15), states: ['standby'],
    how: 'Circulation on, surface moving, replenishment off, lids on.', right: 'all so', wrong: 'something is not', source: commonPractice,
  }),
  look({
    id: 'neg-1-shut-down', station: 'neg-1-drive', name: 'Shut down', schedule: atEach(30), states: ['shutDown'],
    how: 'Replenishers and dryer heat off; transport slack; top rinsed; lids on; washes drained.', right: 'all done', wrong: 'something is left', source: and(archiveTraining, commonPractice),
  }),
  strip({
    id: 'neg-1-strip', station: 'neg-1-strips', name: 'Control strip', schedule: every(120, 30),
    how: 'Between rolls, so that it sees the same bath. It is read one pass later.',
    steps: wedge, gamma: { by: 'greatestSlope' },
    // Invented: γ∞ 1.0 and a rate by which 6.5 min give 0.65; the coefficient lies between those of mixtures of metol and hydroquinone (from memory).
    law: { gammaInfinity: 1, ratePerMinute: 0.1615, coefficientPerTenCelsius: 1.9 },
    figures: [
      { figure: 'baseFog', unit: 'D', step: 0.01, limits: around(0.25, 0.01, 0.02) },
      { figure: 'speed', unit: 'log E', step: 0.01, limits: around(-2.1, 0.02, 0.04) },
      { figure: 'gamma', unit: '1', step: 0.01, limits: around(0.65, 0.01, 0.02) },
    ],
    source: and(archiveTraining, navyControl, fromMemory),
  }),
]

export const negativeChecks: readonly WrittenCheck[] = [...feed, ...developer, ...fixing, ...afterFixing]
