import psychrolib from 'psychrolib'
import { calculation } from '../calculation.ts'
import { above } from '../decimal.ts'
import { noAnswer } from '../refusal.ts'

psychrolib.SetUnitSystem(psychrolib.SI)

/** psychrolib answers this where no vapour is left; the air cannot be that dry, so the two thermometers do not belong together. */
const dryestKilogramsPerKilogram = 1e-7

/** `GetRelHumFromHumRatio` and its kin throw on what they take as out of range; fields have checked all but this. */
const kilogramsPerKilogram = (air: { dryCelsius: number; wetCelsius: number; pascals: number }): number => {
  if (above(air.wetCelsius, air.dryCelsius)) throw noAnswer('wetCelsius', air.wetCelsius, `a number, at most the dry bulb’s ${air.dryCelsius} °C`)
  // Equal by the rule for decimals, yet above in binary.
  const ratio = psychrolib.GetHumRatioFromTWetBulb(air.dryCelsius, Math.min(air.wetCelsius, air.dryCelsius), air.pascals)
  if (ratio <= dryestKilogramsPerKilogram) throw noAnswer('wetCelsius', air.wetCelsius, 'a wet bulb that leaves some vapour in the air: this one is below that of dry air')
  return ratio
}

/** Over water from 0 °C, over ice below. */
export const saturation = (air: { celsius: number; pascals: number }): { pascals: number; kilogramsPerKilogram: number } => ({
  pascals: psychrolib.GetSatVapPres(air.celsius),
  kilogramsPerKilogram: psychrolib.GetSatHumRatio(air.celsius, air.pascals),
})

export const airHumidity = calculation({
  id: 'air.humidity',
  title: 'Humidity from dry and wet bulb',
  inputs: {
    dryCelsius: { kind: 'number', unit: '°C', says: 'dry bulb', atLeast: 0, atMost: 100 },
    wetCelsius: { kind: 'number', unit: '°C', says: 'wet bulb, moved through the air (or fanned) at 3 m/s or more', atLeast: 0, atMost: 100 },
    kilopascals: { kind: 'number', unit: 'kPa', says: 'air pressure', atLeast: 50, atMost: 120, preset: 101.325 },
  },
  outputs: {
    relativeHumidityPercent: { kind: 'number', unit: '%', says: 'relative humidity' },
    dewPointCelsius: { kind: 'number', unit: '°C', says: 'dew point' },
  },
  formula:
    'W = ((2501 − 2.326 t′)·W′s − 1.006 (t − t′)) ÷ (2501 + 1.86 t − 4.186 t′); vapour pressure = p·W ÷ (0.621945 + W); humidity = vapour pressure ÷ saturation pressure at t; dew point: the temperature at which it saturates',
  source: 'ASHRAE Handbook, Fundamentals 2017, chapter 1, equations 5, 6, 20, 22, 33 and 36 (saturation: Hyland and Wexler 1983), through psychrolib',
  domain:
    '0 to 100 °C, wet bulb with liquid water, well ventilated; below 0 °C the dew point is that of frost. Printed tables differ by up to 1.5 % relative humidity between each other; ' +
    'a slack wind over the wet bulb or a dirty wick reads too high.',
  example: {
    inputs: { dryCelsius: 40, wetCelsius: 20 },
    result: { dewPointCelsius: 7 },
    tolerance: 0.5,
    source: 'ASHRAE Handbook, Fundamentals 2017, chapter 1, example 1 (dew point 7 °C), through the test file of an open library',
  },
  run: ({ dryCelsius, wetCelsius, kilopascals }) => {
    const pascals = kilopascals * 1000
    const ratio = kilogramsPerKilogram({ dryCelsius, wetCelsius, pascals })
    return {
      relativeHumidityPercent: 100 * psychrolib.GetRelHumFromHumRatio(dryCelsius, ratio, pascals),
      dewPointCelsius: psychrolib.GetTDewPointFromHumRatio(dryCelsius, ratio, pascals),
    }
  },
  steps: ({ dryCelsius, wetCelsius, kilopascals }, { relativeHumidityPercent, dewPointCelsius }) => {
    const pascals = kilopascals * 1000
    const ratio = kilogramsPerKilogram({ dryCelsius, wetCelsius, pascals })
    return [
      { says: 'water in saturated air at the wet bulb, W′s', value: saturation({ celsius: wetCelsius, pascals }).kilogramsPerKilogram, unit: 'kg/kg' },
      { says: 'water in this air, W', formula: '((2501 − 2.326 t′)·W′s − 1.006 (t − t′)) ÷ (2501 + 1.86 t − 4.186 t′)', value: ratio, unit: 'kg/kg' },
      { says: 'vapour pressure', formula: 'p·W ÷ (0.621945 + W)', value: (kilopascals * ratio) / (0.621945 + ratio), unit: 'kPa' },
      { says: 'saturation pressure at the dry bulb', value: saturation({ celsius: dryCelsius, pascals }).pascals / 1000, unit: 'kPa' },
      { says: 'relative humidity', formula: 'vapour pressure ÷ saturation pressure × 100', value: relativeHumidityPercent, unit: '%' },
      { says: 'dew point', formula: 'the temperature at which this vapour saturates the air', value: dewPointCelsius, unit: '°C' },
    ]
  },
})
