import type { GrayImage } from '../reader/picture.ts'
import type { Recognised } from '../reader/recognised.ts'
import { ReaderFault } from './reader-fault.ts'
import { startReader, within, type ReaderFiles, type RunningReader } from './reader-worker.ts'

export interface ReaderLimits {
  /** Reading some 5 MB from the service worker's store on a slow phone, compiling the core. */
  startMilliseconds: number
  passMilliseconds: number
  /** After this long without a line the worker is ended; the next line starts it again. */
  idleMilliseconds: number
}

const usualLimits: ReaderLimits = { startMilliseconds: 30_000, passMilliseconds: 5_000, idleMilliseconds: 60_000 }

/** The door to the recogniser: one line at a time, each within its time. */
export interface ReaderDoor {
  recognise(line: GrayImage): Promise<Recognised>
  /** Ends the worker; what is still waiting is refused. */
  close(): void
}

/**
 * Opens the reader: starts its worker now, so that a missing file is told before a picture is taken, ends it when idle and starts it
 * again when asked. After a fault the worker is ended and the next line begins afresh.
 */
export const openReader = async (files: ReaderFiles, limits: Partial<ReaderLimits> = {}): Promise<ReaderDoor> => {
  const { startMilliseconds, passMilliseconds, idleMilliseconds } = { ...usualLimits, ...limits }
  let running: RunningReader | null = await startReader(files, startMilliseconds)
  let isClosed = false
  let idle: ReturnType<typeof setTimeout> | undefined
  let queue: Promise<unknown> = Promise.resolve()

  const end = (): void => {
    clearTimeout(idle)
    running?.end()
    running = null
  }
  const rest = (): void => {
    clearTimeout(idle)
    idle = setTimeout(end, idleMilliseconds)
  }
  const read = async (line: GrayImage): Promise<Recognised> => {
    if (isClosed) throw new ReaderFault('closed')
    clearTimeout(idle)
    try {
      running ??= await startReader(files, startMilliseconds)
      // Closed while starting: the worker just made must not outlive the door.
      if (isClosed) throw new ReaderFault('closed')
      const seen = await within(running.recognise(line), passMilliseconds, 'passTimedOut')
      rest()
      return seen
    } catch (fault) {
      end()
      throw fault
    }
  }

  rest()
  return {
    recognise: (line) => {
      const mine = queue.then(() => read(line))
      queue = mine.catch(() => undefined)
      return mine
    },
    close: () => {
      isClosed = true
      end()
    },
  }
}
