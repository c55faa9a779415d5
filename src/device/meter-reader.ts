import type { Expectation } from '../reader/expectation.ts'
import type { Box, Pixels } from '../reader/picture.ts'
import { readMeter, type MeterReading } from '../reader/reader.ts'
import { areKept, dropOptional, isAgreed, keepOptional, type OptionalFile } from './optional-files.ts'
import { openReader, type ReaderDoor } from './reader.ts'
import { hasSimd } from './simd.ts'

/** One of the reader's files, as the build made it. */
export interface BuiltFile extends OptionalFile {
  sha256: string
  /** Bytes as they come over the network, packed. */
  sent: number
}

export interface BuiltReader {
  start: BuiltFile
  worker: BuiltFile
  core: BuiltFile
  plainCore: BuiltFile
  model: BuiltFile
}

/** The reader as the screens see it: its files, and one reading at a time. */
export interface MeterReader {
  /** What fetching it costs this phone: only the core that it can run. */
  sentBytes: number
  /** `kept`: reads without a network. `agreed`: somebody agreed before, but the files are of another version or were dropped. */
  state(): Promise<'kept' | 'agreed' | 'none'>
  keep(onProgress: (share: number) => void, signal?: AbortSignal): Promise<void>
  /** Forgets the files, and that somebody agreed. */
  drop(): Promise<void>
  /** Starts the worker before the first picture, so that the first reading is as quick as the others. Faults name what is wrong. */
  warm(): Promise<void>
  read(pixels: Pixels, box: Box, expectation: Expectation | null): Promise<MeterReading>
  /** Gives worker and memory back; the next reading starts them again. */
  rest(): void
}

export const createMeterReader = (built: BuiltReader, trustScript: (url: string) => string): MeterReader => {
  const simd = hasSimd()
  const files = [built.start, built.worker, simd ? built.core : built.plainCore, built.model]
  let door: Promise<ReaderDoor> | undefined
  const open = (): Promise<ReaderDoor> => {
    door ??= openReader({
      startPath: built.start.path,
      workerPath: built.worker.path,
      corePath: built.core.path,
      plainCorePath: built.plainCore.path,
      modelPath: built.model.path,
      modelSha256: built.model.sha256,
      simd,
      trustScript,
    }).catch((fault: unknown) => {
      door = undefined
      throw fault
    })
    return door
  }
  return {
    sentBytes: files.reduce((sum, { sent }) => sum + sent, 0),
    state: async () => ((await areKept(files)) ? 'kept' : (await isAgreed()) ? 'agreed' : 'none'),
    keep: (onProgress, signal) => keepOptional(files, onProgress, signal),
    drop: dropOptional,
    warm: async () => void (await open()),
    read: async (pixels, box, expectation) => {
      const { recognise } = await open()
      return readMeter(pixels, box, expectation, recognise)
    },
    rest: () => {
      void door?.then((it) => it.close(), () => undefined)
      door = undefined
    },
  }
}
