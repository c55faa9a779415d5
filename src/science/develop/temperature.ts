import { calculation } from '../calculation.ts'

export const developTemperature = calculation({
  id: 'develop.temperature',
  title: 'Development time at another temperature',
  inputs: {
    minutes: { kind: 'number', unit: 'min', says: 'time that is right at the first temperature', above: 0 },
    atCelsius: { kind: 'number', unit: '°C', says: 'temperature of that time', atLeast: 5, atMost: 50 },
    toCelsius: { kind: 'number', unit: '°C', says: 'the other temperature', atLeast: 5, atMost: 50 },
    coefficientPerTenCelsius: { kind: 'number', unit: '1', says: 'how many times faster development is 10 °C warmer', atLeast: 1, atMost: 5 },
  },
  outputs: { minutes: { kind: 'number', unit: 'min', says: 'time for the same gamma' } },
  formula: 't₂ = t₁ × C^((T₁ − T₂) ÷ 10)',
  source: 'temperature coefficient of development, after Houdaille 1903 (from memory)',
  domain:
    'A few degrees either way, 15 to 30 °C. C is 1.25 to 1.3 for metol, 2.2 to 2.8 for hydroquinone, 1.7 to 2.0 for mixtures of both (from memory): ' +
    'find your own from two times that gave one gamma.',
  example: {
    inputs: { minutes: 8, atCelsius: 20, toCelsius: 18, coefficientPerTenCelsius: 2.2 },
    result: { minutes: 9.366 },
    tolerance: 5e-4,
    source: 'worked by hand',
  },
  run: ({ minutes, atCelsius, toCelsius, coefficientPerTenCelsius }) => ({
    minutes: minutes * coefficientPerTenCelsius ** ((atCelsius - toCelsius) / 10),
  }),
  steps: ({ minutes, atCelsius, toCelsius, coefficientPerTenCelsius }, result) => [
    { says: 'degrees colder', formula: 'T₁ − T₂', value: atCelsius - toCelsius, unit: 'K' },
    {
      says: 'factor on the time',
      formula: `${coefficientPerTenCelsius}^((T₁ − T₂) ÷ 10)`,
      value: coefficientPerTenCelsius ** ((atCelsius - toCelsius) / 10),
      unit: '1',
    },
    { says: 'time for the same gamma', formula: `${minutes} min × factor`, value: result.minutes, unit: 'min' },
  ],
})
