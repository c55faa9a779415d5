import type { ShelfName, KeptBlob, Waiting } from '../../src/device/idb/tables.ts'
import { inOrder, type Kept } from '../../src/device/kept.ts'
import { displacedBy, mergePulled, setApart } from '../../src/device/merge.ts'
import { isAt, isPast } from '../../src/device/pages.ts'
import type { EntryId } from '../../src/record/ids.ts'
import { ownChain, sameHead } from '../../src/device/own-chain.ts'
import type { ChainHead, Cursor, Order, Store } from '../../src/device/store.ts'

/** The store's contract without a database: for simulations of many phones. What it is given it copies, as a database would. */
export class MemoryStore implements Store {
  #entries = new Map<string, Kept>()
  #outbox = new Map<number, Waiting>()
  #blobs = new Map<string, KeptBlob>()
  #shelves = new Map<string, unknown>()

  async head(): Promise<ChainHead | undefined> {
    return this.#shelves.get('singles/head') as ChainHead | undefined
  }

  async begin({ head, expected, receipt, keys, former, forget }: Parameters<Store['begin']>[0]): Promise<'begun' | 'moved'> {
    const current = await this.head()
    if (!sameHead(current, expected) && !sameHead(current, head)) return 'moved'
    this.#outbox.clear()
    if (forget) {
      this.#entries.clear()
      this.#blobs.clear()
      this.#shelves.clear()
    }
    this.#shelves.set('singles/head', head).set('singles/receipt', receipt).set('singles/keys', keys)
    if (former) this.#shelves.set(`exports/${former.dev}`, former.row)
    return 'begun'
  }

  async append(entry: Kept, expected: ChainHead, blobs: readonly KeptBlob[]): Promise<'saved' | 'moved'> {
    const head = await this.head()
    if (!head || !sameHead(head, expected)) return this.#entries.get(entry.entry.id)?.h === entry.h ? 'saved' : 'moved'
    this.#entries.set(entry.entry.id, structuredClone(entry))
    this.#outbox.set(entry.entry.seq, { seq: entry.entry.seq, id: entry.entry.id, savedAt: entry.time })
    for (const blob of blobs) this.#blobs.set(blob.sha256, structuredClone(blob))
    this.#shelves.set('singles/head', { dev: entry.entry.dev, seq: entry.entry.seq, h: entry.h })
    return 'saved'
  }

  async waiting(): Promise<{ count: number; oldest?: Waiting }> {
    const first = [...this.#outbox.keys()].sort((a, b) => a - b)[0]
    return { count: this.#outbox.size, ...(first === undefined ? {} : { oldest: this.#outbox.get(first)! }) }
  }

  async chain(dev: string, from: number, limit: number): Promise<Kept[]> {
    return [...this.#entries.values()]
      .filter(({ entry }) => entry.dev === dev && entry.seq >= from)
      .sort((a, b) => a.entry.seq - b.entry.seq)
      .slice(0, limit)
  }

  async acknowledge(acks: readonly { id: EntryId; seq: number }[]): Promise<EntryId[]> {
    const gone = acks.filter(({ id, seq }) => this.#outbox.get(seq)?.id === id)
    for (const { seq } of gone) this.#outbox.delete(seq)
    return gone.map(({ id }) => id)
  }

  async setApart(ids: readonly string[], epoch: string): Promise<Kept[]> {
    const rows = ids.map((id) => setApart(this.#entries.get(id), epoch)).filter((row) => row !== undefined)
    for (const row of rows) this.#entries.set(row.entry.id, row)
    return rows
  }

  async requeue(from: number): Promise<number> {
    const head = await this.head()
    if (!head) return 0
    const back = ownChain(await this.chain(head.dev, from, Infinity), head.h).filter(({ entry }) => !this.#outbox.has(entry.seq))
    for (const { entry, time } of back) this.#outbox.set(entry.seq, { seq: entry.seq, id: entry.id, savedAt: time })
    return back.length
  }

  async cursor(): Promise<Cursor | undefined> {
    return this.#shelves.get('singles/cursor') as Cursor | undefined
  }

  async startCursor(cursor: Cursor): Promise<void> {
    this.#shelves.set('singles/cursor', cursor)
  }

  async apply(page: Parameters<Store['apply']>[0]): ReturnType<Store['apply']> {
    const cursor = await this.cursor()
    let head = await this.head()
    if (isPast(page, cursor)) return { applied: true, changed: await this.byIds(page.entries.map(({ entry }) => entry.id)), regained: 0 }
    if (!isAt(page, cursor)) return { applied: false, changed: [], regained: 0 }
    const changed: Kept[] = []
    let regained = 0
    for (const pulled of page.entries) {
      const sameNumber = [...this.#entries.values()].filter(({ entry }) => entry.dev === pulled.entry.dev && entry.seq === pulled.entry.seq)
      for (const row of displacedBy(pulled, sameNumber, head)) {
        this.#entries.set(row.entry.id, row)
        changed.push(row)
      }
      const merged = mergePulled(this.#entries.get(pulled.entry.id), pulled, head)
      if (!merged) continue
      this.#entries.set(pulled.entry.id, structuredClone(merged.row))
      changed.push(merged.row)
      if (!merged.head) continue
      head = merged.head
      regained++
    }
    this.#shelves.set('singles/head', head).set('singles/cursor', page.next)
    for (const device of page.devices) this.#shelves.set(`devices/${device.dev}`, structuredClone(device))
    return { applied: true, changed, regained }
  }

  async byIds(ids: readonly string[]): Promise<Kept[]> {
    return ids.flatMap((id) => this.#entries.get(id) ?? [])
  }

  async inTime(order: Order): Promise<Kept[]> {
    return this.#ordered(order, () => true)
  }

  async ofKind(kind: string, order: Order): Promise<Kept[]> {
    return this.#ordered(order, ({ entry }) => entry['kind'] === kind)
  }

  async count(): Promise<number> {
    return this.#entries.size
  }

  #ordered({ from = -Infinity, to = Infinity, limit = Infinity, newestFirst }: Order, wanted: (row: Kept) => boolean): Kept[] {
    const rows = [...this.#entries.values()].filter((row) => row.time >= from && row.time <= to && wanted(row)).sort(inOrder)
    return (newestFirst ? rows.reverse() : rows).slice(0, limit)
  }

  async keepBlob(blob: KeptBlob): Promise<void> {
    this.#blobs.set(blob.sha256, structuredClone(blob))
  }

  async blob(sha256: string): Promise<KeptBlob | undefined> {
    return this.#blobs.get(sha256)
  }

  async unsentBlobs(): Promise<KeptBlob['sha256'][]> {
    return [...this.#blobs.values()].filter(({ sent }) => !sent).map(({ sha256 }) => sha256)
  }

  async blobSent(sha256: string): Promise<void> {
    const row = this.#blobs.get(sha256)
    if (row) this.#blobs.set(sha256, { ...row, sent: 1 })
  }

  async offerBlobsAgain(): Promise<number> {
    const sent = [...this.#blobs.values()].filter((row) => row.sent)
    for (const row of sent) this.#blobs.set(row.sha256, { ...row, sent: 0 })
    return sent.length
  }

  async dropSentBlobs(): Promise<number> {
    const sent = [...this.#blobs.values()].filter((row) => row.sent)
    for (const { sha256 } of sent) this.#blobs.delete(sha256)
    return sent.length
  }

  async take(shelf: ShelfName, key: string): Promise<unknown> {
    return this.#shelves.get(`${shelf}/${key}`)
  }

  async keep(shelf: ShelfName, key: string, value: unknown): Promise<void> {
    this.#shelves.set(`${shelf}/${key}`, value)
  }

  async revise<T>(shelf: ShelfName, key: string, change: (value: unknown) => T): Promise<T> {
    const value = change(this.#shelves.get(`${shelf}/${key}`))
    this.#shelves.set(`${shelf}/${key}`, value)
    return value
  }

  async remove(shelf: ShelfName, key: string): Promise<void> {
    this.#shelves.delete(`${shelf}/${key}`)
  }

  async keys(shelf: ShelfName): Promise<string[]> {
    return [...this.#shelves.keys()].filter((key) => key.startsWith(`${shelf}/`)).map((key) => key.slice(shelf.length + 1)).sort()
  }

  async close(): Promise<void> {}

  /** As a copied profile, or one brought back from a backup. */
  copy(): MemoryStore {
    const copy = new MemoryStore()
    copy.#entries = new Map(this.#entries)
    copy.#outbox = new Map(this.#outbox)
    copy.#blobs = new Map(this.#blobs)
    copy.#shelves = new Map(this.#shelves)
    return copy
  }
}
