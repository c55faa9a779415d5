import { createMeterReader, type BuiltReader, type MeterReader } from '../../device/meter-reader.ts'

/** Paths, sizes and hashes of the reader's files, filled in by the build. */
declare const __READER__: BuiltReader

export const readerOf = (trustScript: (url: string) => string): MeterReader => createMeterReader(__READER__, trustScript)
