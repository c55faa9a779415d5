import { around, atEach, eachDay, eachShift, every, instruments, look, reading, strip, wedge, type WrittenCheck } from './kit.ts'
import { and, archiveTraining, armyProcessors, colourPrintManual, commonPractice, fixingPaper, fromMemory, navyControl, printFilmSheet } from './sources.ts'

export const positiveChecks: readonly WrittenCheck[] = [
  reading({
    id: 'pos-2-speed', station: 'pos-2-drive', name: 'Film speed', quantity: 'speed', unit: 'm/min', step: 0.01, limits: around(53.34, 0.25, 0.53),
    holdBelow: 52.27, holdAbove: 54.41, instrument: { name: 'stopwatch on marked leader', low: 3, high: 120 }, schedule: eachShift(30), settleSeconds: 60,
    how: 'Time 50 m of marked leader; do not trust the meter.', source: and(archiveTraining, commonPractice),
  }),
  reading({
    id: 'pos-2-dev-temp', station: 'pos-2-dev', name: 'Developer temperature', quantity: 'temperature', unit: '°C', step: 0.1, limits: around(21, 0.1, 0.25),
    holdBelow: 20.5, holdAbove: 21.5, instrument: instruments.thermometer, schedule: every(30, 10), settleSeconds: 90, states: ['startUp', 'running'],
    how: 'Same depth every time, away from the heater.', source: and(printFilmSheet, armyProcessors),
  }),
  reading({
    id: 'pos-2-dev-level', station: 'pos-2-dev', name: 'Developer level', quantity: 'level', unit: 'mm', step: 5, limits: around(0, 5, 10),
    instrument: instruments.dipMark, schedule: every(60, 15), settleSeconds: 10, pairedWith: 'pos-2-dev-sg', how: 'From the mark; below it is minus.', source: and(archiveTraining, commonPractice),
  }),
  look({
    id: 'pos-2-dev-surface', station: 'pos-2-dev', name: 'Surface movement', schedule: every(60, 15), states: ['startUp', 'running'], immediateHold: true,
    right: 'surface moves', wrong: 'surface still', source: archiveTraining,
  }),
  reading({
    id: 'pos-2-dev-ph', station: 'pos-2-dev', name: 'Developer pH', quantity: 'pH', unit: 'pH', step: 0.01, limits: around(10.1, 0.03, 0.05),
    instrument: instruments.meter, schedule: eachShift(30), settleSeconds: 90, how: 'At bath temperature; it counts when it moves less than 0.01 in 15 s.', source: and(navyControl, fromMemory),
  }),
  reading({
    id: 'pos-2-dev-sg', station: 'pos-2-dev', name: 'Developer specific gravity', quantity: 'specificGravity', unit: 'SG', step: 0.001, limits: around(1.055, 0.002, 0.003),
    instrument: instruments.hydrometer, schedule: eachShift(30), settleSeconds: 600, pairedWith: 'pos-2-dev-level', source: and(navyControl, fromMemory),
  }),
  reading({
    id: 'pos-2-dev-bromide', station: 'pos-2-dev', name: 'Potassium bromide', quantity: 'concentration', of: 'potassiumBromide', unit: 'g/L', step: 0.1,
    limits: around(2.2, 0.1, 0.2), instrument: instruments.burette, schedule: eachDay, method: 'bromide', source: fromMemory,
  }),
  reading({
    id: 'pos-2-dev-carbonate', station: 'pos-2-dev', name: 'Carbonate', quantity: 'concentration', of: 'sodiumCarbonate', unit: 'g/L', step: 0.5,
    limits: around(20, 0.5, 1), instrument: instruments.burette, schedule: eachDay, method: 'carbonate', source: fromMemory,
  }),
  reading({
    id: 'pos-2-rinse-flow', station: 'pos-2-rinse', name: 'Rinse flow', quantity: 'flow', unit: 'L/min', step: 0.5,
    limits: { aim: 21, warningLow: 20, actionLow: 18.9 }, holdBelow: 1, instrument: { name: 'flow meter', low: 0, high: 60 }, schedule: every(60, 15), source: and(printFilmSheet, commonPractice),
  }),
  reading({
    id: 'pos-2-fix-temp', station: 'pos-2-fix', name: 'Fixing bath temperature', quantity: 'temperature', unit: '°C', step: 0.1, limits: around(21, 0.5, 1),
    holdAbove: 27, instrument: instruments.thermometer, schedule: every(60, 15), settleSeconds: 60, source: and(colourPrintManual, armyProcessors),
  }),
  reading({
    id: 'pos-2-fix-ph', station: 'pos-2-fix', name: 'Fixing bath pH', quantity: 'pH', unit: 'pH', step: 0.01,
    limits: { aim: 4.5, warningLow: 4.2, warningHigh: 4.7, actionLow: 4, actionHigh: 4.8 }, holdBelow: 3.9, holdAbove: 5.2,
    instrument: instruments.meter, schedule: every(240, 45), settleSeconds: 90, how: 'At bath temperature; rinse and blot the electrode.', source: fromMemory,
  }),
  reading({
    id: 'pos-2-fix-sulfite', station: 'pos-2-fix', name: 'Fixing bath sulfite', quantity: 'concentration', of: 'sodiumSulfite', unit: 'g/L', step: 0.5,
    limits: { aim: 12, warningLow: 10, actionLow: 8 }, instrument: instruments.burette, schedule: eachDay, method: 'sulfite-fixing', source: fromMemory,
  }),
  look({
    id: 'pos-2-fix-clear', station: 'pos-2-fix', name: 'Fixing bath clear', schedule: eachShift(60), immediateHold: true,
    how: 'Glass beaker against a lamp, after five minutes. By eye, never by nose.', right: 'clear', wrong: 'milky, sulfur or white sludge', source: fixingPaper,
  }),
  reading({
    id: 'pos-2-wash-flow', station: 'pos-2-wash', name: 'Wash flow', quantity: 'flow', unit: 'L/min', step: 0.5,
    limits: { aim: 21, warningLow: 20, actionLow: 18.9 }, holdBelow: 1, instrument: { name: 'flow meter', low: 0, high: 60 }, schedule: every(60, 15), source: and(printFilmSheet, commonPractice),
  }),
  reading({
    id: 'pos-2-dryer-temp', station: 'pos-2-dryer', name: 'Dryer temperature', quantity: 'temperature', unit: '°C', step: 0.5, limits: around(35, 0.5, 1), holdAbove: 40,
    instrument: { name: 'dryer probe', low: 0, high: 90 }, schedule: every(30, 10), source: and(printFilmSheet, commonPractice),
  }),
  look({
    id: 'pos-2-scratches', station: 'pos-2-take-off', name: 'Scratches, both sides', schedule: every(60, 15), states: ['startUp', 'running'], immediateHold: true,
    how: 'Oblique light, both sides.', right: 'none', wrong: 'scratched', source: archiveTraining,
  }),
  look({
    id: 'pos-2-standby', station: 'pos-2-dev', name: 'Standing by', schedule: every(60, 15), states: ['standby'],
    how: 'Circulation on, surface moving, replenishment off, lids on.', right: 'all so', wrong: 'something is not', source: commonPractice,
  }),
  look({
    id: 'pos-2-shut-down', station: 'pos-2-drive', name: 'Shut down', schedule: atEach(30), states: ['shutDown'],
    how: 'Replenishers and dryer heat off; transport slack; top rinsed; lids on; washes drained.', right: 'all done', wrong: 'something is left', source: and(archiveTraining, commonPractice),
  }),
  strip({
    id: 'pos-2-strip', station: 'pos-2-strips', name: 'Control strip', schedule: every(120, 30),
    how: 'Between rolls, so that it sees the same bath. It is read one pass later.',
    steps: wedge, gamma: { by: 'printControl' },
    // Invented: γ∞ 3.2 and a rate by which 3.5 min give 2.5; the coefficient as for the negative.
    law: { gammaInfinity: 3.2, ratePerMinute: 0.4342, coefficientPerTenCelsius: 1.9 },
    figures: [
      { figure: 'baseFog', unit: 'D', step: 0.01, limits: around(0.05, 0.01, 0.02) },
      { figure: 'speed', unit: 'log E', step: 0.01, limits: around(-1.8, 0.02, 0.04) },
      { figure: 'gamma', unit: '1', step: 0.01, limits: around(2.5, 0.03, 0.05) },
    ],
    source: and(printFilmSheet, navyControl, fromMemory),
  }),
]
