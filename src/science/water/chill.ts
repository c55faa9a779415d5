import { calculation } from '../calculation.ts'
import { noAnswer } from '../refusal.ts'

const heatOfWater = 4.186 // kJ/(kg K), liquid near 20 °C; from memory
const heatOfIce = 2.1 // kJ/(kg K), ice near 0 °C; from memory
const latentHeat = 333.55 // kJ/kg at 0 °C; CRC Handbook, from memory

/** kJ that a kilogram of ice takes up until it is water of the wanted temperature. */
const takenUp = ({ toCelsius, iceCelsius }: { toCelsius: number; iceCelsius: number }): number => latentHeat + heatOfWater * toCelsius - heatOfIce * iceCelsius

export const waterChill = calculation({
  id: 'water.chill',
  title: 'Ice to cool mixing or jacket water',
  inputs: {
    litres: { kind: 'number', unit: 'L', says: 'water to cool', above: 0, atMost: 1_000_000 },
    fromCelsius: { kind: 'number', unit: '°C', says: 'its temperature now', atLeast: 0, atMost: 100 },
    toCelsius: { kind: 'number', unit: '°C', says: 'wanted', atLeast: 0, atMost: 100 },
    iceCelsius: { kind: 'number', unit: '°C', says: 'temperature of the ice', atLeast: -40, atMost: 0, preset: 0 },
    gramsPerMillilitre: { kind: 'number', unit: 'g/mL', says: 'density of the water', atLeast: 0.9, atMost: 1.6, preset: 1 },
  },
  outputs: {
    iceKilograms: { kind: 'number', unit: 'kg', says: 'ice that melts and warms up to the wanted temperature' },
    heatKilojoules: { kind: 'number', unit: 'kJ', says: 'heat to take out of the water' },
  },
  formula: 'm = M c (t₁ − t₂) ÷ (L + c t₂ − cᵢ tᵢ)',
  source: 'heat balance; latent heat 333.55 kJ/kg (CRC Handbook, from memory)',
  domain:
    'Mixing water and jackets only: ice in a working bath dilutes it. A litre is taken as a kilogram (0.3 % at 23 °C) unless the density is given; no heat from the vessel or the room, which in practice asks for some more ice.',
  example: {
    inputs: { litres: 800, fromCelsius: 23, toCelsius: 20 },
    result: { iceKilograms: 24.08, heatKilojoules: 10046.4 },
    tolerance: 0.005,
    source: 'worked out for 800 kg',
  },
  run: ({ litres, fromCelsius, toCelsius, iceCelsius, gramsPerMillilitre }) => {
    if (toCelsius > fromCelsius) throw noAnswer('toCelsius', toCelsius, `at most the ${fromCelsius} °C that the water has`)
    const heatKilojoules = litres * gramsPerMillilitre * heatOfWater * (fromCelsius - toCelsius)
    return { iceKilograms: heatKilojoules / takenUp({ toCelsius, iceCelsius }), heatKilojoules }
  },
  steps: ({ fromCelsius, toCelsius, iceCelsius, litres, gramsPerMillilitre }, { iceKilograms, heatKilojoules }) => [
    { says: 'water', formula: 'litres × density', value: litres * gramsPerMillilitre, unit: 'kg' },
    { says: 'heat to take out', formula: `M × 4.186 × (${fromCelsius} − ${toCelsius})`, value: heatKilojoules, unit: 'kJ' },
    { says: 'heat a kilogram of ice takes up', formula: `333.55 + 4.186 × ${toCelsius}${iceCelsius < 0 ? ` + 2.1 × ${-iceCelsius}` : ''}`, value: takenUp({ toCelsius, iceCelsius }), unit: 'kJ/kg' },
    { says: 'ice', formula: 'heat ÷ heat a kilogram takes up', value: iceKilograms, unit: 'kg' },
  ],
})
