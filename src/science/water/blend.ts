import { calculation } from '../calculation.ts'
import { noAnswer } from '../refusal.ts'

const temperature = (says: string) => ({ kind: 'number', unit: '°C', says, atLeast: 0, atMost: 100 }) as const

export const waterBlend = calculation({
  id: 'water.blend',
  title: 'Hot and cold water for a mixing temperature',
  inputs: {
    hotCelsius: temperature('hot water'),
    coldCelsius: temperature('cold water'),
    wantCelsius: temperature('the mixture'),
    totalLitres: { kind: 'number', unit: 'L', says: 'the mixture', above: 0, atMost: 1_000_000 },
  },
  outputs: {
    hotLitres: { kind: 'number', unit: 'L', says: 'hot water' },
    coldLitres: { kind: 'number', unit: 'L', says: 'cold water' },
  },
  formula: 'hot share = (want − cold) ÷ (hot − cold)',
  source: 'heat balance',
  domain: 'Water of 0 to 100 °C; equal heat for each litre and kelvin (off by up to 1 % between 10 and 60 °C), no loss to the vessel.',
  example: {
    inputs: { hotCelsius: 50, coldCelsius: 8, wantCelsius: 20, totalLitres: 500 },
    result: { hotLitres: 142.86, coldLitres: 357.14 },
    tolerance: 0.005,
    source: 'worked out',
  },
  run: ({ hotCelsius, coldCelsius, wantCelsius, totalLitres }) => {
    if (hotCelsius <= coldCelsius) throw noAnswer('hotCelsius', hotCelsius, `more than the cold water’s ${coldCelsius} °C`)
    if (wantCelsius < coldCelsius || wantCelsius > hotCelsius) throw noAnswer('wantCelsius', wantCelsius, `${coldCelsius} to ${hotCelsius} °C, between cold and hot`)
    const span = hotCelsius - coldCelsius
    return { hotLitres: (totalLitres * (wantCelsius - coldCelsius)) / span, coldLitres: (totalLitres * (hotCelsius - wantCelsius)) / span }
  },
  steps: ({ hotCelsius, coldCelsius, wantCelsius }, { hotLitres, coldLitres }) => [
    { says: 'share of hot water', formula: '(want − cold) ÷ (hot − cold)', value: (wantCelsius - coldCelsius) / (hotCelsius - coldCelsius), unit: '1' },
    { says: 'hot water', formula: 'share × total', value: hotLitres, unit: 'L' },
    { says: 'cold water', formula: '(hot − want) ÷ (hot − cold) × total', value: coldLitres, unit: 'L' },
  ],
})
