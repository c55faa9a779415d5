import { calculation } from '../calculation.ts'
import { bufferAt, bufferKeys } from './buffer-table.ts'

export const phMeterBuffer = calculation({
  id: 'phMeter.buffer',
  title: 'pH of a standard buffer',
  inputs: {
    buffer: { kind: 'choice', of: bufferKeys, says: 'one of the five primary standards, or a technical buffer of nominal 4.00, 7.00 or 10.01' },
    celsius: { kind: 'number', unit: '°C', says: 'temperature of the buffer', atLeast: 0, atMost: 50 },
  },
  outputs: { pH: { kind: 'number', unit: '1', says: 'pH of the buffer at this temperature' } },
  formula: 'table, linear between its rows',
  source: 'NIST/NBS pH(S) values to 0.001; technical buffers: a controller manual, to 0.01',
  domain:
    '0 to 50 °C (technical buffers 0 to 40 °C). Interpolation costs at most 0.0025 pH; other standards’ tables differ by up to 0.008, a maker’s own label wins over this table.',
  example: { inputs: { buffer: 'borax', celsius: 25 }, result: { pH: 9.18 }, tolerance: 1e-9, source: 'NIST/NBS pH(S)' },
  run: ({ buffer, celsius }) => ({ pH: bufferAt({ buffer, celsius }, 'celsius').pH }),
  steps: ({ buffer, celsius }, { pH }) => {
    const [low, high] = bufferAt({ buffer, celsius }, 'celsius').between
    const rows = low === high ? [low] : [low, high]
    return [
      ...rows.map(([t, value]) => ({ says: `table value at ${t} °C`, value, unit: 'pH' })),
      { says: `at ${celsius} °C`, formula: rows.length === 1 ? 'a row of the table' : 'linear between the two rows', value: pH, unit: 'pH' },
    ]
  },
})
