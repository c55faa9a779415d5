import { calculation } from '../calculation.ts'
import { noAnswer } from '../refusal.ts'
import { straightLine } from '../strip/straight-line.ts'
import { studentT } from './student.ts'

const leastPoints = 5

/**
 * When a drifting value meets a limit: the straight line through the readings, carried on. The interval is Fieller's, the times at which the confidence
 * band of the line lies on the limit. Where the slope cannot be told from none at that assurance there is no time: "does not drift" is the answer.
 */
export const chartForecast = calculation({
  id: 'chart.forecast',
  title: 'When a drift meets a limit',
  inputs: {
    points: {
      kind: 'list',
      says: 'readings since the bath was last changed, in the order of time',
      atLeast: leastPoints,
      atMost: 10_000,
      of: { kind: 'group', says: 'one reading', fields: { hours: { kind: 'number', unit: 'h', says: 'time' }, value: { kind: 'number', unit: '1', says: 'reading' } } },
    },
    limit: { kind: 'number', unit: '1', says: 'limit that is asked about' },
    confidence: { kind: 'number', unit: '1', says: 'assurance of the interval', above: 0.5, below: 1, preset: 0.9 },
  },
  outputs: {
    drifts: { kind: 'flag', says: 'the slope can be told from none' },
    slopePerHour: { kind: 'number', unit: '1', says: 'change in an hour' },
    slopeStandardError: { kind: 'number', unit: '1', says: 'its standard deviation' },
    hoursAhead: { kind: 'number', unit: 'h', says: 'from the last reading until the line meets the limit; null when it does not drift that way', orNull: true },
    earliestHoursAhead: { kind: 'number', unit: 'h', says: 'early end of the interval; may lie before the last reading', orNull: true },
    latestHoursAhead: { kind: 'number', unit: 'h', says: 'late end of the interval', orNull: true },
  },
  formula: 'line by least squares; (b·d − D)² = t²·s²·(1/n + d²/Σ(x − x̄)²), d from the mean time, D = limit − mean reading, t of Student with n − 2',
  source: 'least squares: Gauss; interval for the time: Fieller 1954, J. Royal Statistical Society B 16, 175 (from memory); t: Hill 1970',
  domain:
    'A steady drift with scatter about it, 5 readings or more since the last change. A bath does not drift straight for ever: a forecast further ahead than the readings reach back is a guess. ' +
    'The interval is that of the line; single readings scatter about it.',
  example: {
    inputs: { points: [[0, 0.7], [2, 0.7], [4, 0.72], [6, 0.71], [8, 0.73], [10, 0.73]].map(([hours, value]) => ({ hours: hours!, value: value! })), limit: 0.75 },
    result: { drifts: true, slopePerHour: 0.003286, hoursAhead: 5.652 },
    tolerance: 5e-4,
    source: 'invented bromide, worked by hand',
  },
  run: ({ points, limit, confidence }) => {
    const hours = points.map((point) => point.hours)
    const values = points.map((point) => point.value)
    const back = hours.findIndex((time, index) => index > 0 && time < hours[index - 1]!)
    if (back > 0) throw noAnswer(`points[${back}].hours`, hours[back], 'readings in the order of time')
    if (hours.at(-1)! === hours[0]!) throw noAnswer('points', hours, 'readings at different times')
    const line = straightLine(hours, values)
    const count = points.length
    const meanHours = hours.reduce((sum, each) => sum + each, 0) / count
    const meanValue = values.reduce((sum, each) => sum + each, 0) / count
    const last = hours.at(-1)!
    const t = studentT({ outside: 1 - confidence, degrees: count - 2 })
    const noise = (t * line.residual) ** 2
    const slope = { slopePerHour: line.slope, slopeStandardError: line.slopeStandardError }
    const drifts = line.slope !== 0 && line.slope ** 2 > noise / line.spread
    const distance = limit - meanValue
    const ahead = drifts ? meanHours + distance / line.slope - last : null
    // A line that left the limit behind it, or runs away from it, meets it in the past.
    const standsBefore = line.slope > 0 ? line.intercept + line.slope * last <= limit : line.intercept + line.slope * last >= limit
    if (ahead === null || !standsBefore) return { drifts, ...slope, hoursAhead: null, earliestHoursAhead: null, latestHoursAhead: null }
    const square = line.slope ** 2 - noise / line.spread
    const root = Math.sqrt(Math.max(0, (line.slope * distance) ** 2 - square * (distance ** 2 - noise / count)))
    const ends = [-root, root].map((each) => meanHours + (line.slope * distance + each) / square - last).sort((a, b) => a - b)
    return { drifts, ...slope, hoursAhead: Math.max(0, ahead), earliestHoursAhead: ends[0]!, latestHoursAhead: ends[1]! }
  },
  steps: ({ points, limit, confidence }, { drifts, slopePerHour, slopeStandardError, hoursAhead, earliestHoursAhead, latestHoursAhead }) => [
    { says: 'readings', value: points.length, unit: '1' },
    { says: 'change in an hour', formula: 'slope by least squares', value: slopePerHour, unit: '1/h' },
    { says: 'its standard deviation', value: slopeStandardError, unit: '1/h' },
    { says: 'Student’s t', formula: `${points.length - 2} degrees of freedom, ${confidence}`, value: studentT({ outside: 1 - confidence, degrees: points.length - 2 }), unit: '1' },
    { says: `meets ${limit} after the last reading by`, value: hoursAhead ?? (drifts ? 'it drifts away from it' : 'it does not drift'), unit: 'h' },
    ...(earliestHoursAhead === null || latestHoursAhead === null ? [] : [{ says: 'at the earliest', value: earliestHoursAhead, unit: 'h' }, { says: 'at the latest', value: latestHoursAhead, unit: 'h' }]),
  ],
})
