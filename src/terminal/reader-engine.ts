import { createRequire } from 'node:module'
import { readFile } from 'node:fs/promises'
import { openEngine, type EngineWire } from '../reader/engine.ts'
import type { Recognise } from '../reader/recognised.ts'

/** The model that ships with the app. */
export const modelFile = new URL('../reader/model/figures.traineddata', import.meta.url)

interface WorkerScript {
  setAdapter(adapter: Record<string, unknown>): void
  dispatchHandlers(packet: unknown, send: (message: unknown) => void): void
}

/**
 * The recogniser for commands and tests: the same worker script, core and model as in the browser, run in this thread. Not through
 * tesseract.js's own Node worker, since that picks the relaxed-SIMD core where Node has it, which aborts on float models.
 */
export const openTerminalReader = async (model: URL | string = modelFile): Promise<Recognise> => {
  const require = createRequire(import.meta.url)
  const script = require('tesseract.js/src/worker-script/index.js') as WorkerScript
  script.setAdapter({ getCore: () => Promise.resolve(require('tesseract.js-core/tesseract-core-simd-lstm') as unknown) })
  let handler: (message: unknown) => void = () => undefined
  const wire: EngineWire = {
    post: (packet) => script.dispatchHandlers(packet, (message) => handler(message)),
    listen: (listener) => (handler = listener),
  }
  return openEngine(wire, { corePath: '', model: new Uint8Array(await readFile(model)) })
}
