import type { Known } from '../../corrections/situation.ts'
import type { Exception } from '../../projections/exceptions.ts'
import type { LabState } from '../../projections/lab-state.ts'
import type { Ledger } from '../../projections/ledger.ts'

/** What the person has said at this remedy: the lot in hand, the water that there is. */
export type Said = Pick<Known, 'jacket' | 'supply'> & { lots: Readonly<Record<string, string>> }

/** What the log says of an exception beyond its fold (the figures of a strip, the resets), and what the person has said. */
export const knownOf = ({ resets }: LabState, ledger: Ledger, exception: Exception, { lots, jacket, supply }: Said): Known => {
  const line = [...exception.marks].reverse().map(({ id }) => ledger.line(id)).find((it) => it?.kind === 'strip')
  return {
    ...(line?.kind === 'strip' ? { stripFigures: line.data.figures, ...(line.data.aims ? { stripAims: line.data.aims } : {}) } : {}),
    ...(resets.length ? { resets } : {}),
    ...(Object.keys(lots).length ? { lots } : {}),
    ...(jacket ? { jacket } : {}),
    ...(supply ? { supply } : {}),
  }
}
