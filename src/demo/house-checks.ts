import { anyState, around, eachShift, every, instruments, look, reading, type WrittenCheck } from './kit.ts'
import { and, colourPrintManual, commonPractice, fromMemory, hazardsBook, navyBasic, navyControl, navySilver } from './sources.ts'

/** Each titrant, its method of standardising and how many days its strength stands. From memory. */
const titrants = (
  [
    ['iodine-strength', 'Iodine 0.1 N', 'iodine', 'iodine-standard', 7],
    ['thiosulfate-strength', 'Thiosulfate 0.1 N', 'sodiumThiosulfate', 'thiosulfate-standard', 14],
    ['silver-nitrate-strength', 'Silver nitrate 0.1 N', 'silverNitrate', 'silver-nitrate-standard', 30],
    ['ceric-strength', 'Ceric sulfate 0.1 N', 'cericSulfate', 'ceric-standard', 30],
  ] as const
).map(([id, name, of, method, days]) =>
  reading({
    id, station: 'instruments', name, quantity: 'concentration', of, unit: 'eq/L', step: 0.0001, limits: around(0.1, 0.002, 0.005), instrument: { name: 'burette', low: 0, high: 1 },
    schedule: every(days * 24 * 60, 24 * 60), method, source: fromMemory,
  }),
)

/** Places that serve both machines: silver cell, instruments, plant, safety, drain. Most are asked for whether film runs or not. */
export const houseChecks: readonly WrittenCheck[] = [
  reading({
    id: 'silver-current', station: 'silver-cell', name: 'Silver cell current', quantity: 'current', unit: 'A', step: 0.5, limits: around(150, 7.5, 15),
    instrument: { name: 'cell ammeter', low: 0, high: 300 }, schedule: every(60, 20), settleSeconds: 600, source: and(navySilver, commonPractice),
  }),
  reading({
    id: 'silver-harvest', station: 'silver-cell', name: 'Silver harvested', quantity: 'mass', of: 'silver', unit: 'g', step: 10, limits: { aim: 60000 },
    instrument: { name: 'scale', low: 0, high: 200000 }, schedule: every(7 * 24 * 60, 24 * 60), states: anyState, source: commonPractice,
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
    id: 'ph-slope', station: 'instruments', name: 'pH electrode: slope', quantity: 'voltage', of: 'slopePercent', unit: '%', step: 0.1,
    limits: { aim: 98, warningLow: 95, warningHigh: 102, actionLow: 90, actionHigh: 105 }, instrument: { name: 'pH meter', low: 50, high: 120 }, schedule: every(24 * 60, 8 * 60), states: anyState,
    method: 'ph-calibration', source: 'USP ⟨791⟩, from memory',
  }),
  reading({
    id: 'ph-offset', station: 'instruments', name: 'pH electrode: offset', quantity: 'voltage', of: 'offsetMillivolts', unit: 'mV', step: 0.1,
    limits: around(0, 15, 30), instrument: { name: 'pH meter', low: -200, high: 200 }, schedule: every(24 * 60, 8 * 60), states: anyState,
    method: 'ph-calibration', source: 'USP ⟨791⟩, from memory',
  }),
  ...titrants,
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
    id: 'drain-silver', station: 'drain', name: 'Silver at the drain', quantity: 'concentration', of: 'silver', unit: 'mg/L', step: 0.1,
    limits: { aim: 0.5, warningHigh: 2, actionHigh: 4 }, instrument: { name: 'silver test strip', low: 0, high: 50 }, schedule: eachShift(120), settleSeconds: 30,
    states: anyState, how: 'Sample after the last trap. The site’s permit rules; the figures here are examples.', source: commonPractice,
  }),
  look({
    id: 'gas-alarms', station: 'safety', name: 'Gas alarms tested', schedule: every(7 * 24 * 60, 24 * 60), states: anyState,
    how: 'Sulfur dioxide, hydrogen sulfide and solvent vapour, each with its test gas, as its maker says.', right: 'each sounds', wrong: 'silent, or overdue', source: and(hazardsBook, commonPractice),
  }),
  reading({
    id: 'water-hardness', station: 'plant', name: 'Water hardness', quantity: 'concentration', of: 'calciumCarbonate', unit: 'mg/L', step: 5,
    limits: { aim: 60, warningHigh: 150, actionHigh: 200 }, instrument: { name: 'hardness test', low: 0, high: 500 }, schedule: every(7 * 24 * 60, 24 * 60), states: anyState, source: fromMemory,
  }),
  reading({
    id: 'water-iron', station: 'plant', name: 'Iron in the water', quantity: 'concentration', of: 'iron', unit: 'mg/L', step: 0.1,
    limits: { aim: 0.1, warningHigh: 0.3, actionHigh: 0.5 }, instrument: { name: 'iron test', low: 0, high: 10 }, schedule: every(7 * 24 * 60, 24 * 60), states: anyState, source: fromMemory,
  }),
  reading({
    id: 'residual-thiosulfate', station: 'neg-1-wash', name: 'Residual thiosulfate', quantity: 'residual', of: 'microgramsPerSquareCentimetre', unit: 'µg/cm²', step: 0.01,
    limits: { aim: 0.6, warningHigh: 1.1, actionHigh: 1.4 }, instrument: { name: 'photometer', low: 0, high: 20 }, schedule: every(7 * 24 * 60, 24 * 60), method: 'residual-thiosulfate',
    source: 'ISO 18917; common practice, no source',
  }),
  reading({
    id: 'free-acid', station: 'neg-1-fix', name: 'Free acid', quantity: 'concentration', of: 'freeAcid', unit: 'g/L', step: 0.1, limits: around(12, 1, 2), instrument: { name: 'burette', low: 0, high: 60 },
    schedule: every(7 * 24 * 60, 24 * 60), method: 'free-acid', source: fromMemory,
  }),
  look({
    id: 'lots', station: 'mixing', name: 'Lots: assay and expiry', schedule: every(24 * 60, 8 * 60), states: anyState,
    how: 'Each opened drum: lot, assay on its paper, date. Peroxide date on ethers.', right: 'all in date', wrong: 'one is over', source: commonPractice,
  }),
  look({
    id: 'titration-blanks', station: 'instruments', name: 'Titration blanks', schedule: every(24 * 60, 8 * 60), states: anyState,
    how: 'A blank of each method.', right: 'as before', wrong: 'moved', source: commonPractice,
  }),
  look({
    id: 'sensitometer', station: 'instruments', name: 'Sensitometer lamp', schedule: every(24 * 60, 8 * 60), states: anyState,
    how: 'Lamp current at its mark, hours on the card.', right: 'at its mark', wrong: 'off, or over its hours', source: navyControl,
  }),
  reading({
    id: 'drain-ph', station: 'drain', name: 'pH at the drain', quantity: 'pH', unit: 'pH', step: 0.1,
    limits: { aim: 7.5, warningLow: 6.5, warningHigh: 9, actionLow: 6, actionHigh: 9.5 }, instrument: instruments.meter, schedule: eachShift(120), settleSeconds: 60,
    states: anyState, how: 'The site’s permit rules.', source: commonPractice,
  }),
]
