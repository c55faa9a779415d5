import { calculation } from '../calculation.ts'
import { noAnswer } from '../refusal.ts'
import { lawFields, minutesTo } from './law.ts'
import { assertOnCurve } from './time.ts'

/**
 * The machine speed that brings a strip's gamma to its aim.
 *
 * The curve is moved along the time axis until it passes through the measured gamma at the present time,
 * γ = γ∞·(1 − e^(−κ(t − t₀))): the change of time between two gammas then needs neither t₀ nor its cause. (Nietz 1922 writes the law
 * with this t₀, from memory.) Where the bath's activity has changed instead, κ itself has; the answer for that case is
 * given beside the first. The two part by a few per cent of the change that is asked for, so a re-check follows either.
 */
export const developSpeed = calculation({
  id: 'develop.speed',
  title: 'Machine speed for a gamma',
  inputs: {
    pathMetres: { kind: 'number', unit: 'm', says: 'length of the film’s path in the developer', above: 0 },
    metresPerMinute: { kind: 'number', unit: 'm/min', says: 'present speed of the machine', above: 0 },
    ...lawFields,
    measuredGamma: { kind: 'number', unit: '1', says: 'gamma of the strip at the present speed', above: 0 },
    aimGamma: { kind: 'number', unit: '1', says: 'gamma wanted', above: 0 },
  },
  outputs: {
    metresPerMinute: { kind: 'number', unit: 'm/min', says: 'speed for the gamma wanted' },
    minutes: { kind: 'number', unit: 'min', says: 'time of development at that speed' },
    presentMinutes: { kind: 'number', unit: 'min', says: 'time of development now' },
    byRateMetresPerMinute: { kind: 'number', unit: 'm/min', says: 'speed, were the whole difference laid to the rate of development' },
  },
  formula:
    'new time = path ÷ speed + (ln(1 − measured ÷ γ∞) − ln(1 − aim ÷ γ∞)) ÷ κ; new speed = path ÷ new time; by the rate: speed × ln(1 − measured ÷ γ∞) ÷ ln(1 − aim ÷ γ∞)',
  source: 'γ = γ∞·(1 − e^(−κt)): Sheppard and Mees (from memory), moved along the time axis to the measured gamma (Nietz 1922, from memory)',
  domain:
    'Both gammas below γ∞, by the definition of gamma from which the curve was fitted. For small steps (up to 0.1 in gamma); temperature and bath unchanged meanwhile.',
  example: {
    inputs: { pathMetres: 180, metresPerMinute: 30, gammaInfinity: 1.25, ratePerMinute: 0.127706, measuredGamma: 0.62, aimGamma: 0.65 },
    result: { metresPerMinute: 28.2041, minutes: 6.38205, byRateMetresPerMinute: 28.0058 },
    tolerance: 5e-4,
    source: 'worked by hand',
  },
  run: ({ pathMetres, metresPerMinute, gammaInfinity, ratePerMinute, measuredGamma, aimGamma }) => {
    assertOnCurve('measuredGamma', measuredGamma, gammaInfinity)
    assertOnCurve('aimGamma', aimGamma, gammaInfinity)
    const presentMinutes = pathMetres / metresPerMinute
    const toMeasured = minutesTo({ gammaInfinity, ratePerMinute, gamma: measuredGamma })
    const toAim = minutesTo({ gammaInfinity, ratePerMinute, gamma: aimGamma })
    const minutes = presentMinutes + toAim - toMeasured
    if (!(minutes > 0)) throw noAnswer('aimGamma', aimGamma, 'a gamma that some time of development gives: this one would need less than none')
    return { metresPerMinute: pathMetres / minutes, minutes, presentMinutes, byRateMetresPerMinute: (metresPerMinute * toMeasured) / toAim }
  },
  steps: ({ measuredGamma, aimGamma }, { metresPerMinute, minutes, presentMinutes, byRateMetresPerMinute }) => [
    { says: 'time of development now', formula: 'path ÷ speed', value: presentMinutes, unit: 'min' },
    {
      says: `change of time from gamma ${measuredGamma} to ${aimGamma}`,
      formula: '(ln(1 − measured ÷ γ∞) − ln(1 − aim ÷ γ∞)) ÷ κ',
      value: minutes - presentMinutes,
      unit: 'min',
    },
    { says: 'new time of development', formula: 'time now + change', value: minutes, unit: 'min' },
    { says: 'new speed', formula: 'path ÷ new time', value: metresPerMinute, unit: 'm/min' },
    {
      says: 'were the whole difference laid to the bath’s activity',
      formula: 'speed × ln(1 − measured ÷ γ∞) ÷ ln(1 − aim ÷ γ∞)',
      value: byRateMetresPerMinute,
      unit: 'm/min',
    },
  ],
})
