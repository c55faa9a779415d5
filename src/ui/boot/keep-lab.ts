import { signal, type ReadonlySignal } from '@preact/signals'
import type { Book } from '../../device/book.ts'
import { isCounted, type Kept } from '../../device/kept.ts'
import { Lab } from '../../projections/lab.ts'
import { foldVersion } from '../../projections/lab-state.ts'
import type { Arrived } from '../../projections/line.ts'
import { parseSnapshot } from '../../projections/snapshot.ts'
import type { App } from '../app-context.ts'

const snapshotName = 'lab'
const day = 86_400_000
/** Lines this recent are kept in memory, for the shift's page and the charts; what lies before is in the snapshot. */
const inMemoryMilliseconds = 4 * day
/** A fresh snapshot is put away when so many lines lie before the border. */
const worthwhileLines = 2_000

export interface KeptLab {
  lab: App['lab']
  stop(): void
}

const arrivedOf = (rows: readonly Kept[]): Arrived[] =>
  rows.filter(isCounted).map(({ entry, h, gseq, recvAt }) => ({ entry, h, gseq, recvAt, status: 'valid' }))

/** Folds the record of this phone and keeps the fold up to date: from a snapshot where there is one, anew where something older has come. */
export const keepLab = async (book: Book, now: () => number, onFault: (thrown: unknown) => void): Promise<KeptLab> => {
  const version = String(foldVersion)
  const foldAll = async (): Promise<Lab> => {
    const lab = new Lab()
    lab.add(arrivedOf(await book.since(0)))
    return lab
  }
  /** Whether what was added needs lines from before the snapshot. */
  const reachesBack = async ({ older, unknown }: ReturnType<Lab['add']>): Promise<boolean> =>
    older.length > 0 || (unknown.length > 0 && (await book.byIds(unknown)).length > 0)

  const start = async (): Promise<Lab> => {
    const kept = await book.snapshot<unknown>(snapshotName, version)
    const snapshot = kept && parseSnapshot(kept.state)
    if (!snapshot) return foldAll()
    const lab = Lab.restore(snapshot)
    return (await reachesBack(lab.add(arrivedOf(await book.since(snapshot.last.time))))) ? foldAll() : lab
  }

  let lab = await start()
  const told = signal(view(lab))
  const tell = (): void => {
    told.value = view(lab)
  }
  const take = async (rows: Kept[]): Promise<void> => {
    const added = lab.add(arrivedOf(rows))
    tell()
    if (lab.linesBefore > 0 && (await reachesBack(added))) {
      lab = await foldAll()
      tell()
    }
  }
  const stop = book.onEntries((rows) => {
    take(rows).catch(onFault)
  })

  const border = now() - inMemoryMilliseconds
  if (lab.ledger.indexAt(border) >= worthwhileLines) {
    const snapshot = lab.snapshot(border)
    if (snapshot) await book.keepSnapshot(snapshotName, { version, upTo: snapshot.last.time, state: snapshot })
  }
  return { lab: told as ReadonlySignal<ReturnType<typeof view>>, stop }
}

/** Without a store there is no record; the emergency cards still work. */
export const emptyLab = (): KeptLab => ({ lab: signal(view(new Lab())), stop: () => undefined })

const view = (lab: Lab) => ({ state: lab.state, ledger: lab.ledger, log: lab })
