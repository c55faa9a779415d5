import type { CheckId } from '../plan/ids.ts'
import type { Verdict } from '../plan/limits.ts'
import type { EntryId } from '../record/ids.ts'
import type { StripBatch } from '../record/kinds/strip-batch.ts'
import type { Projection } from './projection.ts'

type Figures = { [name: string]: number }

/** A strip that was read, as the next one is drawn over it. */
export interface StripMark {
  id: EntryId
  time: number
  verdict: Verdict
  densities: Figures
  logExposures?: Figures
  figures: Figures
  batch?: string
}

/** A batch in use since an instant. */
export interface BatchNow extends Pick<StripBatch, 'batch' | 'aims' | 'reference' | 'correction' | 'crossover'> {
  id: EntryId
  from: number
}

export interface StripsNow {
  /** Newest last, at most `keptStrips`. */
  recent: StripMark[]
  /** Newest last, at most `keptBatches`. */
  batches: BatchNow[]
}
export type Strips = { [id: CheckId]: StripsNow }

export const keptStrips = 12
export const keptBatches = 4

export const strips: Projection<Strips> = {
  start: () => ({}),
  step: (state, line) => {
    if (line.kind === 'stripBatch') {
      const { check, batch, aims, reference, correction, crossover } = line.data
      const { batches } = (state[check] ??= { recent: [], batches: [] })
      batches.push({
        id: line.id, from: line.time, batch, aims, ...(reference ? { reference } : {}), ...(correction ? { correction } : {}), ...(crossover ? { crossover } : {}),
      })
      if (batches.length > keptBatches) batches.shift()
    }
    if (line.kind !== 'strip') return
    const { check, densities, logExposures, figures, batch, verdict } = line.data
    const { recent } = (state[check] ??= { recent: [], batches: [] })
    recent.push({
      id: line.id, time: line.time, verdict, figures, densities: Object.fromEntries(Object.entries(densities).map(([step, { value }]) => [step, value])),
      ...(logExposures ? { logExposures } : {}), ...(batch ? { batch } : {}),
    })
    if (recent.length > keptStrips) recent.shift()
  },
}

/** The batch in use at an instant: strips already hanging to dry when a new one came belong to the old. */
export const batchAt = (strips: StripsNow | undefined, time: number): BatchNow | undefined => strips?.batches.findLast(({ from }) => from <= time)
