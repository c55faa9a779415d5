import { noAnswer } from '../refusal.ts'

/**
 * pH of standard buffers by temperature, one row a temperature: [°C, pH].
 *
 * The five primary standards: NIST/NBS pH(S) to 0.001, as carried in the look-up table of a public analog front-end design (opened).
 * Other tables differ by up to 0.008 (phthalate at 25 °C: 4.005 here, 4.003 in HJ 1147-2020, 4.008 in NBS 1962, 4.01 in JIS Z 8802).
 * The three technical buffers (nominal 4.00, 7.00, 10.01): a controller manual (opened), to 0.01; they end at 40 °C.
 */
export const bufferTables = {
  tetroxalate: [[0, 1.666], [5, 1.668], [10, 1.67], [20, 1.675], [25, 1.679], [30, 1.683], [40, 1.694], [50, 1.707]],
  phthalate: [[0, 4.0], [5, 3.998], [10, 3.997], [20, 4.001], [25, 4.005], [30, 4.011], [40, 4.027], [50, 4.05]],
  phosphate: [[0, 6.984], [5, 6.951], [10, 6.923], [20, 6.881], [25, 6.865], [30, 6.853], [40, 6.838], [50, 6.833]],
  borax: [[0, 9.464], [5, 9.395], [10, 9.332], [20, 9.225], [25, 9.18], [30, 9.139], [40, 9.068], [50, 9.01]],
  carbonate: [[0, 10.317], [5, 10.245], [10, 10.179], [20, 10.062], [25, 10.012], [30, 9.966], [40, 9.889], [50, 9.828]],
  technical4: [[0, 4.0], [10, 4.0], [20, 4.0], [25, 4.0], [30, 4.01], [40, 4.03]],
  technical7: [[0, 7.12], [10, 7.06], [20, 7.02], [25, 7.0], [30, 6.99], [40, 6.98]],
  technical10: [[0, 10.32], [10, 10.18], [20, 10.06], [25, 10.01], [30, 9.97], [40, 9.89]],
} as const satisfies Readonly<Record<string, readonly (readonly [celsius: number, pH: number])[]>>

export type Buffer = keyof typeof bufferTables
export const bufferKeys = Object.keys(bufferTables) as Buffer[]

export interface BufferReading {
  pH: number
  /** Rows it lies between; the same row twice on a row. */
  between: readonly [readonly [number, number], readonly [number, number]]
}

/**
 * Linear between rows: over the 22 temperatures of the fuller table from 0 to 50 °C that costs at most 0.0025 pH.
 * `field` names the temperature, for a refusal outside the table.
 * @example bufferAt({ buffer: 'borax', celsius: 22 }, 'celsius').pH // 9.207
 */
export const bufferAt = ({ buffer, celsius }: { buffer: Buffer; celsius: number }, field: string): BufferReading => {
  const rows: readonly (readonly [number, number])[] = bufferTables[buffer]
  const after = rows.findIndex(([t]) => t >= celsius)
  const high = rows[after]
  const low = high && high[0] === celsius ? high : rows[after - 1]
  if (!high || !low) throw noAnswer(field, celsius, `${rows[0]![0]} to ${rows.at(-1)![0]} °C for the ${buffer} buffer`)
  const share = high === low ? 0 : (celsius - low[0]) / (high[0] - low[0])
  return { pH: low[1] + share * (high[1] - low[1]), between: [low, high] }
}
