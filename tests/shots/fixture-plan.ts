import { labPlan, type LabPlan } from '../../src/plan/lab-plan.ts'

const startingValue = { kind: 'startingValue', source: 'common practice, no source' } as const
const every = (minutes: number, graceMinutes = 15) => ({ kind: 'interval', minutes, graceMinutes }) as const
const running = ['running'] as const
const tank = (litres: number, constituents: object[] = []) => ({ litres, headroomLitres: litres * 0.04, circulationLitresPerMinute: litres / 6, constituents })
const fixingSalts = [
  { substance: 'sodiumThiosulfate', gramsPerLitre: 153 },
  { substance: 'sodiumSulfite', gramsPerLitre: 12 },
  { substance: 'aceticAcid', gramsPerLitre: 9 },
]
const reading = (id: string, station: string, name: string, rest: object) => ({
  kind: 'reading', id, station, name, schedule: every(60), states: running, immediateHold: false, setBy: startingValue, ...rest,
})
const look = (id: string, station: string, name: string, right: string, wrong: string, rest: object = {}) => ({
  kind: 'look', id, station, name, right, wrong, schedule: every(60), states: running, immediateHold: false, setBy: startingValue, ...rest,
})
const celsius = (aim: number, action: number, warning: number) => ({
  quantity: 'temperature', unit: '°C', step: 0.1, settleSeconds: 60,
  limits: { aim, warningLow: aim - warning, warningHigh: aim + warning, actionLow: aim - action, actionHigh: aim + action },
  instrument: { name: 'dial thermometer', low: 0, high: 60 },
})

/** A negative machine of fourteen places, a positive one of eight and a plain one of four: what the drawing must be able to show. */
export const fixturePlan: LabPlan = labPlan.parse({
  format: 'bathkeeper-plan', version: 1, name: 'Harbour Street Laboratory', demo: true, timeZone: 'Europe/Vienna',
  units: { temperature: '°C', volume: 'L', mass: 'g', length: 'm' },
  people: [
    { id: 'ada', name: 'Ada Brandt', role: 'operator' },
    { id: 'ilya', name: 'Ilya Moreno', role: 'operator' },
    { id: 'ruth', name: 'Ruth Okafor', role: 'supervisor' },
  ],
  shifts: [
    { id: 'day', name: 'Day shift', from: '06:00', to: '14:30' },
    { id: 'late', name: 'Late shift', from: '14:30', to: '22:30' },
    { id: 'night', name: 'Night shift', from: '22:30', to: '06:00' },
  ],
  machines: [
    {
      id: 'neg', name: 'Negative machine 1', stock: 'negative', light: 'panchromatic', gaugeMillimetres: 35, aimMetresPerMinute: 30.5, reserveMetres: 30,
      stations: [
        { id: 'neg-feed', name: 'Feed', short: 'Feed', kind: 'feed', pathMetres: 1 },
        { id: 'neg-elev', name: 'Elevator', short: 'Elev', kind: 'elevator', pathMetres: 30 },
        { id: 'neg-dev-1', name: 'Developer 1', short: 'Dev 1', kind: 'developer', pathMetres: 120, bath: tank(900) },
        { id: 'neg-dev-2', name: 'Developer 2', short: 'Dev 2', kind: 'developer', pathMetres: 120, bath: tank(900) },
        { id: 'neg-rinse', name: 'Rinse', short: 'Rinse', kind: 'rinse', pathMetres: 20, bath: tank(180) },
        { id: 'neg-fix-1', name: 'Fixing bath 1', short: 'Fix 1', kind: 'fixing', pathMetres: 90, bath: tank(640, fixingSalts) },
        { id: 'neg-fix-2', name: 'Fixing bath 2', short: 'Fix 2', kind: 'fixing', pathMetres: 90, bath: tank(640, fixingSalts) },
        { id: 'neg-wash-1', name: 'Wash 1', short: 'Wash 1', kind: 'wash', pathMetres: 60, bath: tank(420) },
        { id: 'neg-wash-2', name: 'Wash 2', short: 'Wash 2', kind: 'wash', pathMetres: 60, bath: tank(420) },
        { id: 'neg-wash-3', name: 'Wash 3', short: 'Wash 3', kind: 'wash', pathMetres: 60, bath: tank(420) },
        { id: 'neg-squeegee', name: 'Final squeegee', short: 'Squeeg', kind: 'squeegee', pathMetres: 1 },
        { id: 'neg-dryer', name: 'Dryer', short: 'Dryer', kind: 'dryer', pathMetres: 150 },
        { id: 'neg-drive', name: 'Main drive', short: 'Drive', kind: 'drive', pathMetres: 1 },
        { id: 'neg-take', name: 'Take-off', short: 'Take', kind: 'takeOff', pathMetres: 2 },
        { id: 'neg-cell', name: 'Silver cell', short: 'Cell', kind: 'silverCell' },
        { id: 'neg-plant', name: 'Plant room', short: 'Plant', kind: 'plant' },
      ],
    },
    {
      id: 'pos', name: 'Positive machine 2', stock: 'positive', light: 'blueSensitive', gaugeMillimetres: 35, aimMetresPerMinute: 53,
      stations: [
        { id: 'pos-feed', name: 'Feed', short: 'Feed', kind: 'feed', pathMetres: 1 },
        { id: 'pos-dev', name: 'Developer', short: 'Dev', kind: 'developer', pathMetres: 110, bath: tank(800) },
        { id: 'pos-rinse', name: 'Rinse', short: 'Rinse', kind: 'rinse', pathMetres: 20, bath: tank(150) },
        { id: 'pos-fix', name: 'Fixing bath', short: 'Fix', kind: 'fixing', pathMetres: 90, bath: tank(640, fixingSalts) },
        { id: 'pos-wash', name: 'Wash', short: 'Wash', kind: 'wash', pathMetres: 90, bath: tank(500) },
        { id: 'pos-squeegee', name: 'Air knife', short: 'Knife', kind: 'squeegee', pathMetres: 1 },
        { id: 'pos-dryer', name: 'Dryer', short: 'Dryer', kind: 'dryer', pathMetres: 140 },
        { id: 'pos-take', name: 'Take-off', short: 'Take', kind: 'takeOff', pathMetres: 1 },
      ],
    },
    {
      id: 'test', name: 'Test machine', stock: 'positive', light: 'orthochromatic', gaugeMillimetres: 16, aimMetresPerMinute: 6,
      stations: [
        { id: 'test-dev', name: 'Developer', short: 'Dev', kind: 'developer', pathMetres: 20, bath: tank(90) },
        { id: 'test-fix', name: 'Fixing bath', short: 'Fix', kind: 'fixing', pathMetres: 20, bath: tank(90, fixingSalts) },
        { id: 'test-wash', name: 'Wash', short: 'Wash', kind: 'wash', pathMetres: 20, bath: tank(90) },
        { id: 'test-dryer', name: 'Dryer', short: 'Dryer', kind: 'dryer', pathMetres: 20 },
      ],
    },
  ],
  checks: [
    reading('neg-dev-1-temp', 'neg-dev-1', 'Developer temperature', { ...celsius(21, 0.5, 0.2), how: 'Probe at working depth, away from the heat exchanger', darkWork: true }),
    reading('neg-dev-1-level', 'neg-dev-1', 'Developer level', { quantity: 'level', unit: 'mm', step: 5, limits: { aim: 0, warningLow: -10, warningHigh: 10, actionLow: -20, actionHigh: 20 }, instrument: { name: 'dip mark', low: -200, high: 60 } }),
    look('neg-dev-1-surface', 'neg-dev-1', 'Surface movement', 'Visible all over', 'Still or uneven', { immediateHold: true }),
    reading('neg-rinse-flow', 'neg-rinse', 'Rinse flow', { quantity: 'flow', unit: 'L/min', step: 0.5, limits: { aim: 12, warningLow: 11, actionLow: 10 }, instrument: { name: 'flow meter', low: 0, high: 40 } }),
    reading('neg-fix-1-ph', 'neg-fix-1', 'Fixing bath pH', { quantity: 'pH', unit: 'pH', step: 0.01, settleSeconds: 90, how: 'Sample at bath temperature, meter calibrated this shift', limits: { aim: 4.5, warningLow: 4.3, warningHigh: 4.7, actionLow: 4.1, actionHigh: 4.8 }, instrument: { name: 'pH meter', low: 0, high: 14 } }),
    reading('neg-fix-1-sulfite', 'neg-fix-1', 'Fixing bath sulfite', { quantity: 'concentration', of: 'sodiumSulfite', unit: 'g/L', step: 0.5, schedule: every(480, 60), limits: { aim: 12, warningLow: 9, actionLow: 8 }, instrument: { name: 'iodine titration', low: 0, high: 60 } }),
    reading('neg-fix-1-temp', 'neg-fix-1', 'Fixing bath temperature', celsius(21, 1, 0.7)),
    reading('neg-fix-1-level', 'neg-fix-1', 'Fixing bath level', { quantity: 'level', unit: 'mm', step: 5, limits: { aim: 0, warningLow: -10, warningHigh: 10, actionLow: -20, actionHigh: 20 }, instrument: { name: 'dip mark', low: -200, high: 60 } }),
    reading('neg-wash-1-flow', 'neg-wash-1', 'Wash flow', { quantity: 'flow', unit: 'L/min', step: 0.5, limits: { aim: 12, warningLow: 11, actionLow: 10 }, instrument: { name: 'flow meter', low: 0, high: 40 } }),
    look('neg-squeegee-look', 'neg-squeegee', 'Squeegee', 'Strand leaves dry', 'Drops or streaks'),
    reading('neg-dryer-air', 'neg-dryer', 'Dryer air temperature', celsius(35, 5, 1)),
    look('neg-take-scratch', 'neg-take', 'Scratches, both sides', 'None', 'Scratched', { immediateHold: true }),
    { kind: 'strip', id: 'neg-take-strip', station: 'neg-take', name: 'Control strip', schedule: every(120, 30), states: running, immediateHold: false, setBy: startingValue, figures: [
      { figure: 'baseFog', unit: '1', step: 0.01, limits: { aim: 0.28, warningLow: 0.26, warningHigh: 0.3, actionLow: 0.24, actionHigh: 0.32 } },
      { figure: 'gamma', unit: '1', step: 0.01, limits: { aim: 0.65, warningLow: 0.63, warningHigh: 0.67, actionLow: 0.62, actionHigh: 0.68 } },
    ] },
    look('neg-cell-gas', 'neg-cell', 'Cell: smell of gas', 'None', 'Rotten eggs', { immediateHold: true }),
    reading('pos-dev-temp', 'pos-dev', 'Developer temperature', celsius(21, 0.5, 0.2)),
    reading('pos-fix-ph', 'pos-fix', 'Fixing bath pH', { quantity: 'pH', unit: 'pH', step: 0.01, settleSeconds: 90, limits: { aim: 4.3, warningLow: 4.1, warningHigh: 4.6, actionLow: 4, actionHigh: 4.8 }, instrument: { name: 'pH meter', low: 0, high: 14 } }),
    reading('pos-wash-flow', 'pos-wash', 'Wash flow', { quantity: 'flow', unit: 'L/min', step: 0.5, limits: { aim: 13, warningLow: 12, actionLow: 11 }, instrument: { name: 'flow meter', low: 0, high: 40 } }),
    reading('test-dev-temp', 'test-dev', 'Developer temperature', celsius(20, 0.5, 0.2)),
  ],
  materials: [
    { id: 'acetic-28', name: 'Acetic acid 28 %', substance: 'aceticAcid', strength: { kind: 'percent', percentByMass: 28, gramsPerMillilitre: 1.037 }, unit: 'mL', caution: 'acetic-acid-28', safeSingleDosePerLitre: 4, secondPerson: true, for: ['neg-fix-1', 'neg-fix-2', 'pos-fix'] },
    { id: 'sulfite', name: 'Sodium sulfite, anhydrous', substance: 'sodiumSulfite', strength: { kind: 'solid', form: 'anhydrous' }, unit: 'g', caution: 'sodium-sulfite', for: ['neg-fix-1', 'neg-fix-2', 'pos-fix'] },
  ],
  methods: [],
  emergency: {
    calls: [{ who: 'Fire and ambulance', number: '112' }, { who: 'Poison centre', number: '+43 1 555 0100' }, { who: 'Ruth Okafor, supervisor', number: '+43 1 555 0133' }],
    eyewash: 'At the door of the mixing room, left',
    assembly: 'Yard, by the gate',
  },
  onCall: 'ruth',
})
