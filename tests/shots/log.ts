import type { DataOf, Kind } from '../../src/record/kinds.ts'
import type { EntryId } from '../../src/record/ids.ts'
import type { Arrived } from '../../src/projections/line.ts'

/** A log written down in a few lines, without keys and seals: the screens read what the store gives them, not what the chain holds. */
export class Log {
  readonly entries: Arrived[] = []
  readonly #now: number

  constructor(now: number) {
    this.#now = now
  }

  add<K extends Kind>(kind: K, minutesAgo: number, data: DataOf<K>, person: string | null = 'ada'): EntryId {
    const seq = this.entries.length + 1
    const hex = seq.toString(16).padStart(12, '0')
    const id = `01900000-0000-7000-8000-${hex}` as EntryId
    this.entries.push({
      h: hex.padStart(64, '0') as Arrived['h'],
      status: 'valid',
      entry: {
        v: 1, id, dev: '00000000000000d1' as Arrived['entry']['dev'], seq, prev: '0'.repeat(64) as Arrived['h'], kind,
        at: new Date(this.#now - minutesAgo * 60_000).toISOString(), tz: 'Europe/Vienna', sess: '00000001', mono: seq, skew: null, op: person,
        data: data as Record<string, unknown>, blobs: [],
      },
    })
    return id
  }
}
