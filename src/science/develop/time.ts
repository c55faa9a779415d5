import { calculation } from '../calculation.ts'
import { below } from '../decimal.ts'
import { noAnswer } from '../refusal.ts'
import { lawFields, minutesTo } from './law.ts'

/** A gamma on the curve: above zero and short of γ∞, which no time reaches. `field` names the input for the refusal. */
export const assertOnCurve = (field: string, gamma: number, gammaInfinity: number): void => {
  if (!below(gamma, gammaInfinity)) throw noAnswer(field, gamma, `a number, more than 0 and less than γ∞, which is ${gammaInfinity}`)
}

export const developTime = calculation({
  id: 'develop.time',
  title: 'Development time for a gamma',
  inputs: { ...lawFields, aimGamma: { kind: 'number', unit: '1', says: 'gamma wanted', above: 0 } },
  outputs: {
    minutes: { kind: 'number', unit: 'min', says: 'time of development' },
    gammaPerMinute: { kind: 'number', unit: '1/min', says: 'how fast gamma still grows at that time' },
  },
  formula: 't = −ln(1 − γ ÷ γ∞) ÷ κ; growth = κ·(γ∞ − γ)',
  source: 'γ = γ∞·(1 − e^(−κt)): Sheppard and Mees (from memory), solved for t',
  domain: 'A gamma below γ∞, and a time within those from which the curve was fitted; the same bath, temperature and definition of gamma.',
  example: {
    inputs: { gammaInfinity: 0.81, ratePerMinute: 0.270310072, aimGamma: 0.6 },
    result: { minutes: 4.994 },
    tolerance: 5e-5,
    source: 'closed form, worked by hand',
  },
  run: ({ gammaInfinity, ratePerMinute, aimGamma }) => {
    assertOnCurve('aimGamma', aimGamma, gammaInfinity)
    return { minutes: minutesTo({ gammaInfinity, ratePerMinute, gamma: aimGamma }), gammaPerMinute: ratePerMinute * (gammaInfinity - aimGamma) }
  },
  steps: ({ gammaInfinity, aimGamma }, { minutes, gammaPerMinute }) => [
    { says: 'share of γ∞ that is wanted', formula: 'γ ÷ γ∞', value: aimGamma / gammaInfinity, unit: '1' },
    { says: 'time of development', formula: '−ln(1 − γ ÷ γ∞) ÷ κ', value: minutes, unit: 'min' },
    { says: 'gamma still grows by', formula: 'κ·(γ∞ − γ)', value: gammaPerMinute, unit: '1/min' },
  ],
})
