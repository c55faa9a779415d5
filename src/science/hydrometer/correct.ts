import { calculation } from '../calculation.ts'
import { gramsPerMillilitreOfWater } from '../water/density.ts'

/**
 * A glass hydrometer read off its own temperature displaces a little more or less: density at t = reading × (1 − γ (t − t₀)), γ the cubical
 * expansion of its glass (ISO 649 practice, from memory). To compare with an aim stated at t₀ the bath’s own expansion must be undone as well; it is taken as
 * water’s, which understates that of strong solutions (a fixing bath expands about half again as much: 0.0005 over 5 K).
 */
export const hydrometerCorrect = calculation({
  id: 'hydrometer.correct',
  title: 'Hydrometer read at another temperature',
  inputs: {
    reading: { kind: 'number', unit: '1', says: 'specific gravity read', atLeast: 0.5, atMost: 3 },
    readAtCelsius: { kind: 'number', unit: '°C', says: 'temperature of the bath', atLeast: 0, atMost: 100 },
    calibratedAtCelsius: { kind: 'number', unit: '°C', says: 'temperature printed on the hydrometer', atLeast: 0, atMost: 100 },
    glassExpansionPerKelvin: { kind: 'number', unit: '1/K', says: 'cubical expansion of the hydrometer’s glass', atLeast: 0, atMost: 0.001, preset: 2.5e-5 },
    bathExpansion: {
      kind: 'choice',
      of: ['water', 'none'],
      preset: 'water',
      says: 'water: specific gravity at the hydrometer’s temperature, the bath expanding as water does; none: at the temperature it was read at',
    },
  },
  outputs: { specificGravity: { kind: 'number', unit: '1', says: 'corrected' } },
  formula: 'SG = R (1 − γ (t − t₀)) × ρw(t₀) ÷ ρw(t); the last factor only for bath expansion as water',
  source: 'ISO 649 practice (from memory); density of water Kell 1975',
  domain: '0 to 100 °C. Working baths expand somewhat more than water: read near the hydrometer’s temperature where the third decimal matters.',
  example: {
    inputs: { reading: 1.1, readAtCelsius: 30, calibratedAtCelsius: 20, bathExpansion: 'none' },
    result: { specificGravity: 1.099725 },
    tolerance: 5e-7,
    source: 'ISO 649 practice, worked out',
  },
  run: ({ reading, readAtCelsius, calibratedAtCelsius, glassExpansionPerKelvin, bathExpansion }) => {
    const glass = 1 - glassExpansionPerKelvin * (readAtCelsius - calibratedAtCelsius)
    const water = bathExpansion === 'water' ? gramsPerMillilitreOfWater(calibratedAtCelsius) / gramsPerMillilitreOfWater(readAtCelsius) : 1
    return { specificGravity: reading * glass * water }
  },
  steps: ({ reading, readAtCelsius, calibratedAtCelsius, glassExpansionPerKelvin, bathExpansion }, { specificGravity }) => [
    { says: 'read', value: reading, unit: '1' },
    {
      says: 'factor for the glass',
      formula: `1 − ${glassExpansionPerKelvin} × (${readAtCelsius} − ${calibratedAtCelsius})`,
      value: 1 - glassExpansionPerKelvin * (readAtCelsius - calibratedAtCelsius),
      unit: '1',
    },
    ...(bathExpansion === 'water'
      ? [{ says: 'factor for the bath’s expansion, as water', formula: 'ρw(t₀) ÷ ρw(t)', value: gramsPerMillilitreOfWater(calibratedAtCelsius) / gramsPerMillilitreOfWater(readAtCelsius), unit: '1' }]
      : []),
    { says: bathExpansion === 'water' ? `specific gravity at ${calibratedAtCelsius} °C` : `specific gravity at ${readAtCelsius} °C`, value: specificGravity, unit: '1' },
  ],
})
