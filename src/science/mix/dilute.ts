import { calculation } from '../calculation.ts'
import { noAnswer } from '../refusal.ts'

export const mixDilute = calculation({
  id: 'mix.dilute',
  title: 'Stock solution diluted to a strength',
  inputs: {
    stockPercent: { kind: 'number', unit: '%', says: 'strength of the stock', above: 0, atMost: 100 },
    wantPercent: { kind: 'number', unit: '%', says: 'strength wanted, in the same kind of percent', above: 0, atMost: 100 },
    wantLitres: { kind: 'number', unit: 'L', says: 'volume wanted', above: 0, atMost: 1_000_000 },
  },
  outputs: {
    stockLitres: { kind: 'number', unit: 'L', says: 'stock' },
    waterLitres: { kind: 'number', unit: 'L', says: 'water' },
  },
  formula: 'stock = want % ÷ stock % × litres; water = litres − stock',
  source: 'cross rule, by volume',
  domain: 'Percent by volume or mass in volume; volumes are taken to add up (glacial acetic acid and water shrink by about 2 %: make up to the mark). Acid into water, never water into acid.',
  example: { inputs: { stockPercent: 28, wantPercent: 1, wantLitres: 28 }, result: { stockLitres: 1, waterLitres: 27 }, tolerance: 1e-9, source: 'cross rule 1 : 27 for 28 % to 1 %' },
  run: ({ stockPercent, wantPercent, wantLitres }) => {
    if (wantPercent > stockPercent) throw noAnswer('wantPercent', wantPercent, `at most the stock’s ${stockPercent} %`)
    return { stockLitres: (wantLitres * wantPercent) / stockPercent, waterLitres: (wantLitres * (stockPercent - wantPercent)) / stockPercent }
  },
  steps: ({ stockPercent, wantPercent }, { stockLitres, waterLitres }) => [
    { says: 'times to dilute', formula: 'stock % ÷ want %', value: stockPercent / wantPercent, unit: '1' },
    { says: 'stock', formula: 'litres ÷ times', value: stockLitres, unit: 'L' },
    { says: 'water first, then the stock into it', formula: 'litres − stock', value: waterLitres, unit: 'L' },
  ],
})
