import { anyState, around, eachShift, every, instruments, look, reading, type WrittenCheck } from './kit.ts'
import { and, colourPrintManual, commonPractice, fromMemory, hazardsBook, navyBasic, navySilver } from './sources.ts'

/** Places that serve both machines: silver cell, instruments, plant, safety, drain. Most are asked for whether film runs or not. */
export const houseChecks: readonly WrittenCheck[] = [
  reading({
    id: 'silver-current', station: 'silver-cell', name: 'Silver cell current', quantity: 'current', unit: 'A', step: 0.5, limits: around(40, 2, 4),
    instrument: { name: 'cell ammeter', low: 0, high: 150 }, schedule: every(60, 20), settleSeconds: 600, source: and(navySilver, commonPractice),
  }),
  look({
    id: 'silver-plate', station: 'silver-cell', name: 'Silver plate', schedule: eachShift(60), immediateHold: true,
    how: 'A rotten-egg smell means hydrogen sulfide: leave, ventilate, do not sniff again.', right: 'bright, no smell', wrong: 'dark, or a smell', source: navySilver,
  }),
  look({
    id: 'ph-meter', station: 'instruments', name: 'pH meter calibrated', calibrates: 'pH meter', schedule: every(12 * 60, 120), states: anyState,
    how: 'Two buffers around the bath; a third within 0.1.', right: 'slope and third buffer good', wrong: 'out', source: 'pH guide of a waste-water laboratory',
  }),
  reading({
    id: 'densitometer', station: 'instruments', name: 'Densitometer plaque', calibrates: 'densitometer', quantity: 'density', of: 'plaque', unit: 'D', step: 0.01, limits: around(1.5, 0.01, 0.02),
    instrument: { name: 'densitometer', low: 0, high: 4 }, schedule: eachShift(20), settleSeconds: 600, how: 'Zero first, after ten minutes of warming up.', source: commonPractice,
  }),
  look({
    id: 'thermometer', station: 'instruments', name: 'Thermometer against a known one', calibrates: 'reference thermometer', schedule: every(7 * 24 * 60, 24 * 60), states: anyState,
    right: 'within 0.1 °C', wrong: 'differs', source: navyBasic,
  }),
  reading({
    id: 'chilled-water', station: 'plant', name: 'Chilled water supply', quantity: 'temperature', unit: '°C', step: 0.5, limits: around(9, 1.5, 2),
    instrument: { name: 'gauge', low: -5, high: 40 }, schedule: every(120, 30), source: fromMemory,
  }),
  look({
    id: 'eyewash', station: 'safety', name: 'Eyewash and shower', schedule: eachShift(15), states: anyState, safeguard: 'eyewash',
    how: 'Run both for a moment; once a week for a minute.', right: 'clear water, way free', wrong: 'no water, or blocked', source: and(hazardsBook, commonPractice),
  }),
  look({
    id: 'exhaust', station: 'safety', name: 'Exhaust over tanks and mixing', schedule: eachShift(15), states: anyState, safeguard: 'exhaust',
    how: 'Smoke tube at the tank edge; never by nose.', right: 'draws away', wrong: 'does not draw', source: and(colourPrintManual, commonPractice),
  }),
  reading({
    id: 'drain-ph', station: 'drain', name: 'pH at the drain', quantity: 'pH', unit: 'pH', step: 0.1,
    limits: { aim: 7.5, warningLow: 6.5, warningHigh: 9, actionLow: 6, actionHigh: 9.5 }, instrument: instruments.meter, schedule: eachShift(120), settleSeconds: 60,
    states: anyState, how: 'The site’s permit rules.', source: commonPractice,
  }),
]
