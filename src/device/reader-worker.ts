import { openEngine } from '../reader/engine.ts'
import type { Recognise } from '../reader/recognised.ts'
import { ReaderFault } from './reader-fault.ts'
import { hasSimd } from './simd.ts'

/** Where the reader's files are; all on this site, under `/reader/`. */
export interface ReaderFiles {
  /** `reader-start.js` of this folder, as it stands. */
  startPath: string
  /** tesseract.js: `dist/worker.min.js` */
  workerPath: string
  /** tesseract.js-core: `tesseract-core-simd-lstm.wasm.js`. Not the relaxed-SIMD one: it aborts on float models. */
  corePath: string
  /** tesseract.js-core: `tesseract-core-lstm.wasm.js`, for phones without SIMD. */
  plainCorePath: string
  modelPath: string
  /** Hexadecimal SHA-256 of the model, from its card; a model that differs is refused. */
  modelSha256?: string
  /** Left out, it is found out. */
  simd?: boolean
  /** Makes a worker's address acceptable to a page under Trusted Types; left out, it is used as it is. */
  trustScript?: (url: string) => string
}

export interface RunningReader {
  recognise: Recognise
  /** Ends the worker and gives its memory back. */
  end(): void
}

/** Starts the worker with core and model. Faults name what is wrong; a worker that failed is ended. */
export const startReader = async (files: ReaderFiles, startMilliseconds: number): Promise<RunningReader> => {
  const corePath = ownUrl((files.simd ?? hasSimd()) ? files.corePath : files.plainCorePath)
  const startUrl = ownUrl(`${files.startPath}#${new URL(ownUrl(files.workerPath)).pathname}`)
  const model = await fetchModel(ownUrl(files.modelPath), files.modelSha256)
  const worker = new Worker(files.trustScript ? files.trustScript(startUrl) : startUrl)
  const failed = new Promise<never>((_, reject) => {
    worker.onerror = (event) => reject(new ReaderFault('startFailed', event.message))
  })
  try {
    const engine = openEngine(
      {
        post: (packet) => worker.postMessage(packet),
        listen: (handler) => (worker.onmessage = (event: MessageEvent<unknown>) => handler(event.data)),
      },
      { corePath, model },
    )
    const recognise = await within(Promise.race([engine, failed]), startMilliseconds, 'startTimedOut')
    return { recognise: (line) => Promise.race([recognise(line), failed]), end: () => worker.terminate() }
  } catch (fault) {
    worker.terminate()
    throw fault instanceof ReaderFault ? fault : new ReaderFault('startFailed', fault)
  }
}

/** The promise, or a fault once the time is over. */
export const within = async <T>(promise: Promise<T>, milliseconds: number, code: 'startTimedOut' | 'passTimedOut'): Promise<T> => {
  let timer: ReturnType<typeof setTimeout> | undefined
  const late = new Promise<never>((_, reject) => {
    timer = setTimeout(() => reject(new ReaderFault(code)), milliseconds)
  })
  try {
    return await Promise.race([promise, late])
  } finally {
    clearTimeout(timer)
  }
}

const ownUrl = (path: string): string => {
  const url = new URL(path, self.location.href)
  if (url.origin !== self.location.origin) throw new ReaderFault('foreignOrigin', url.href)
  return url.href
}

const fetchModel = async (url: string, sha256: string | undefined): Promise<Uint8Array> => {
  const answer = await fetch(url).catch((fault: unknown) => {
    throw new ReaderFault('fileMissing', fault)
  })
  if (!answer.ok) throw new ReaderFault('fileMissing', answer.status)
  const bytes = await answer.arrayBuffer()
  if (sha256 !== undefined) {
    const found = [...new Uint8Array(await crypto.subtle.digest('SHA-256', bytes))].map((byte) => byte.toString(16).padStart(2, '0')).join('')
    if (found !== sha256) throw new ReaderFault('fileDamaged', url)
  }
  return new Uint8Array(bytes)
}
