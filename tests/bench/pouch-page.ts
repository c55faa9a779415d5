import { countFetch, type Traffic } from './counted-fetch.ts'

export interface PouchBench {
  /** So many documents, of the same content as our entries, in a local database. */
  queue(count: number): Promise<void>
  push(remote: string): Promise<Traffic & { milliseconds: number; documents: number }>
  pull(remote: string): Promise<Traffic & { milliseconds: number; documents: number }>
}

interface Pouch {
  bulkDocs(docs: readonly object[]): Promise<unknown>
  replicate: { to(remote: string, options: object): Promise<{ docs_written: number }>; from(remote: string, options: object): Promise<{ docs_written: number }> }
}
declare const PouchDB: new (name: string, options?: object) => Pouch

// Before its script is there, which takes `fetch` as it finds it.
const counted = countFetch()
/** As many at a time as our phones send; ten times the number of its own default made no difference. */
const options = { batch_size: 200 }
const hex = (count: number): string => Array.from(crypto.getRandomValues(new Uint8Array(count)), (byte) => byte.toString(16).padStart(2, '0')).join('')
let local: Pouch

const measured = async (work: () => Promise<{ docs_written: number }>) => {
  counted.take()
  const began = performance.now()
  const { docs_written } = await work()
  return { milliseconds: performance.now() - began, documents: docs_written, ...counted.take() }
}

const bench: PouchBench = {
  queue: async (count) => {
    local = new PouchDB(`queue-${hex(4)}`)
    const dev = hex(8)
    const docs = Array.from({ length: count }, (_, index) => ({
      _id: `${hex(4)}-${hex(2)}-7${hex(2).slice(1)}-8${hex(2).slice(1)}-${hex(6)}`,
      entry: {
        v: 1, dev, seq: index + 1, prev: hex(32), kind: 'note', at: new Date().toISOString(), tz: 'Europe/Lisbon', sess: hex(4), mono: index, skew: { ms: 0, within: 20 }, op: null,
        data: { text: `The replenisher of machine ${index % 3} was refilled to the mark`, about: 'general', machine: 'neg-1', station: 'neg-1-dev' }, blobs: [],
      },
      h: hex(32), sig: hex(43),
    }))
    for (let from = 0; from < count; from += 1000) await local.bulkDocs(docs.slice(from, from + 1000))
  },
  push: (remote) => measured(() => local.replicate.to(remote, options)),
  pull: (remote) => measured(() => new PouchDB(`pull-${hex(4)}`).replicate.from(remote, options)),
}
Object.assign(globalThis, { pouchBench: bench })
