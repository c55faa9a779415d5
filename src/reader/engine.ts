import { pgm } from './pgm.ts'
import type { Recognise, Recognised, Symbol } from './recognised.ts'

/**
 * Speaks to the worker script of tesseract.js (7.0.0) by the messages that its own `createWorker` sends. Spoken directly because that
 * function takes the worker's address only as text, which a page under Trusted Types may not use, has no time-outs, throws into the void on a failed
 * job, and falls back to a public server for any path left out. The worker script itself is used unchanged.
 */
export interface EngineWire {
  post(packet: Packet): void
  /** Called once; the handler gets every message of the worker. */
  listen(handler: (message: unknown) => void): void
}

interface Packet {
  workerId: string
  jobId: string
  action: 'load' | 'loadLanguage' | 'initialize' | 'setParameters' | 'recognize'
  payload: Record<string, unknown>
}

/** The name under which the model is known inside the engine. */
const modelName = 'figures'
const lstmOnly = 1
/** One line as it is, without looking for lines first: measured far better on cut-outs than "one text line". */
const rawLine = '13'

export const openEngine = async (wire: EngineWire, files: { corePath: string; model: Uint8Array }): Promise<Recognise> => {
  let jobs = 0
  const waiting = new Map<string, { resolve: (data: unknown) => void; reject: (fault: Error) => void }>()
  wire.listen((message) => {
    const { jobId, status, data } = message as { jobId?: string; status?: string; data?: unknown }
    const job = jobId === undefined ? undefined : waiting.get(jobId)
    if (!job || jobId === undefined || status === 'progress') return
    waiting.delete(jobId)
    if (status === 'resolve') job.resolve(data)
    else job.reject(new Error(`the recogniser failed: ${String(data)}`))
  })
  const run = (action: Packet['action'], payload: Packet['payload']): Promise<unknown> =>
    new Promise((resolve, reject) => {
      const jobId = `${action}-${++jobs}`
      waiting.set(jobId, { resolve, reject })
      wire.post({ workerId: 'reader', jobId, action, payload })
    })

  await run('load', { options: { lstmOnly: true, corePath: files.corePath, logging: false } })
  await run('loadLanguage', { langs: [{ code: modelName, data: files.model }], options: { gzip: false, cacheMethod: 'none', lstmOnly: true } })
  await run('initialize', { langs: modelName, oem: lstmOnly, config: {} })
  // Cut-outs always come dark on light: looking for the reverse would double the time of a poor line and only add errors.
  await run('setParameters', { params: { tessedit_pageseg_mode: rawLine, tessedit_do_invert: '0' } })
  return async (line) => symbolsOf(await run('recognize', { image: pgm(line), options: {}, output: { text: false, blocks: true } }))
}

/** Tesseract nests symbols in words, lines, paragraphs and blocks; a display has one row of them, so only their order counts. */
const symbolsOf = (data: unknown): Recognised => {
  const symbols: Symbol[] = []
  const visit = (node: unknown): void => {
    if (Array.isArray(node)) return node.forEach(visit)
    if (typeof node !== 'object' || node === null) return
    const { symbols: found, blocks, paragraphs, lines, words } = node as Record<string, unknown>
    if (Array.isArray(found)) {
      for (const symbol of found as unknown[]) {
        const { text, confidence } = symbol as { text?: unknown; confidence?: unknown }
        if (typeof text === 'string' && typeof confidence === 'number') symbols.push({ text, confidence: confidence / 100 })
      }
      return
    }
    for (const inner of [blocks, paragraphs, lines, words]) visit(inner)
  }
  visit(data)
  return { symbols }
}
