import { calculation } from '../calculation.ts'

/** 12 000 British thermal units (International Table, 1055.05585262 J) an hour, in kW; from memory. */
const kilowattsPerTon = (12_000 * 1.05505585262) / 3600

export const waterRefrigeration = calculation({
  id: 'water.refrigeration',
  title: 'Tons of refrigeration in kilowatts',
  inputs: { tonsOfRefrigeration: { kind: 'number', unit: 'ton', says: 'cooling power as stated on the chiller', atLeast: 0, atMost: 100_000 } },
  outputs: { kilowatts: { kind: 'number', unit: 'kW', says: 'cooling power' } },
  formula: 'kW = tons × 12 000 Btu/h',
  source: 'definition: 12 000 Btu(IT) an hour; from memory',
  domain: 'A unit only: what a chiller gives falls with a colder outlet and a hotter condenser.',
  example: { inputs: { tonsOfRefrigeration: 1 }, result: { kilowatts: 3.516853 }, tolerance: 5e-7, source: 'definition' },
  run: ({ tonsOfRefrigeration }) => ({ kilowatts: tonsOfRefrigeration * kilowattsPerTon }),
  steps: (_, { kilowatts }) => [
    { says: 'one ton of refrigeration', formula: '12 000 Btu/h', value: kilowattsPerTon, unit: 'kW' },
    { says: 'cooling power', formula: 'tons × kW a ton', value: kilowatts, unit: 'kW' },
  ],
})
