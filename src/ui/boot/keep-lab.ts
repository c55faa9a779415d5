import { signal, type ReadonlySignal } from '@preact/signals'
import type { Book } from '../../device/book.ts'
import { isCounted, type Kept } from '../../device/kept.ts'
import { Lab } from '../../projections/lab.ts'
import { foldVersion } from '../../projections/lab-state.ts'
import type { Arrived } from '../../projections/line.ts'
import { parseSnapshot } from '../../projections/snapshot.ts'
import type { Envelope } from '../../record/entry.ts'
import type { App } from '../app-context.ts'

const snapshotName = 'lab'
const day = 86_400_000
/** Lines this recent are kept in memory, for the shift's page, the charts and the yield of a week; what lies before is in the snapshot. */
const inMemoryMilliseconds = 8 * day
/** A fresh snapshot is put away when so many lines lie before the border. */
const worthwhileLines = 2_000

export interface KeptLab {
  lab: App['lab']
  /** Resolves when what came after the snapshot is folded too. Until then `lab` tells of days ago, and only who has the phone may be asked. */
  whole: Promise<void>
  stop(): void
}

const arrivedOf = (rows: readonly Kept[]): Arrived[] =>
  rows.map(({ entry, h, gseq, recvAt, status }) => ({ entry: entry as Envelope, h, gseq, recvAt, status }))

/**
 * Folds the record of this phone and keeps the fold up to date: from a snapshot where there is one, anew where something older has come. Gives the lab as
 * soon as it has a plan: a snapshot's, before what came after it, which waits until the first screen is drawn.
 */
export const keepLab = async (book: Book, now: () => number, onFault: (thrown: unknown) => void, drawn: Promise<void> = Promise.resolve()): Promise<KeptLab> => {
  const version = String(foldVersion)
  const foldAll = async (): Promise<Lab> => {
    const lab = new Lab()
    lab.add(arrivedOf(await book.since(0)))
    return lab
  }
  /** Whether what was added needs lines from before the snapshot. */
  const reachesBack = async ({ older, unknown }: ReturnType<Lab['add']>): Promise<boolean> =>
    older.length > 0 || (unknown.length > 0 && (await book.byIds(unknown)).length > 0)

  const restore = async (): Promise<{ lab: Lab; upTo: number } | undefined> => {
    const kept = await book.snapshot<unknown>(snapshotName, version)
    const snapshot = kept && parseSnapshot(kept.state)
    return snapshot && { lab: Lab.restore(snapshot), upTo: snapshot.last.time }
  }
  const foldOn = async ({ lab, upTo }: { lab: Lab; upTo: number }): Promise<Lab> =>
    (await reachesBack(lab.add(arrivedOf(await book.since(upTo))))) ? foldAll() : lab
  /**
   * The server has said of an entry what a fold cannot take back: that it does not count, where it may lie in the snapshot, or, after it was
   * put back from a backup, that it came later than it first said.
   */
  const isToldOtherwise = (lab: Lab, row: Kept): boolean => {
    const line = lab.ledger.line(row.entry.id)
    if (!isCounted(row)) return lab.linesBefore > 0 && !line
    return row.recvAt !== undefined && line?.recvAt !== undefined && row.recvAt > line.recvAt
  }

  // What comes while the log is read waits its turn: added to the fold that is being replaced, it would be gone with it.
  let lab = new Lab()
  const told = signal(view(lab))
  const tell = (): void => {
    told.value = view(lab)
  }
  let turn: Promise<void> = Promise.resolve()
  const inTurn = (work: () => Promise<void>): void => {
    turn = turn.then(work).catch(onFault)
  }
  const restoring = restore()
  const reading = restoring.then(async (restored) => {
    if (restored) await drawn
    lab = restored ? await foldOn(restored) : await foldAll()
    tell()
  })
  inTurn(() => reading.catch(() => undefined))
  const stop = book.onEntries((rows) => inTurn(() => take(rows)))
  const take = async (rows: Kept[]): Promise<void> => {
    const isOtherwise = rows.some((row) => isToldOtherwise(lab, row))
    const added = lab.add(arrivedOf(rows))
    tell()
    if (!isOtherwise && !(lab.linesBefore > 0 && (await reachesBack(added)))) return
    if (isOtherwise && lab.linesBefore > 0) await book.keepSnapshot(snapshotName, { version: 'none', upTo: 0, state: null })
    lab = await foldAll()
    tell()
  }

  const putAway = async (): Promise<void> => {
    const border = now() - inMemoryMilliseconds
    if (lab.ledger.indexAt(border) < worthwhileLines) return
    const snapshot = lab.snapshot(border)
    if (snapshot) await book.keepSnapshot(snapshotName, { version, upTo: snapshot.last.time, state: snapshot })
  }

  try {
    const restored = await restoring
    if (restored) told.value = view(restored.lab)
    else await reading
  } catch (thrown) {
    stop()
    throw thrown
  }
  // What cannot be read on from a snapshot is not told from the snapshot alone.
  const whole = reading.catch((thrown: unknown) => {
    stop()
    onFault(thrown)
    tell()
  })
  inTurn(() => reading.then(putAway, () => undefined))
  return { lab: told as ReadonlySignal<ReturnType<typeof view>>, whole, stop }
}

/** Without a store there is no record; the emergency cards still work. */
export const emptyLab = (): KeptLab => ({ lab: signal(view(new Lab())), whole: Promise.resolve(), stop: () => undefined })

const view = (lab: Lab) => ({ state: lab.state, ledger: lab.ledger, log: lab })
