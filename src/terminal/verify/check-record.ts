import { signOff } from '../../record/kinds/sign-off.ts'
import type { RecordFile } from '../../wire/record-file.ts'
import type { ShiftFile } from '../../wire/shift-file.ts'
import { chainFaults, checkSignatures, entryFaults, type Bad, type CheckedShift } from './check-shift.ts'

export interface CheckedRecord {
  bad: Bad[]
  /** The shifts signed in it that lie within its span whole. */
  shifts: ({ shift: ShiftFile['shift'] } & Omit<CheckedShift, 'bad'>)[]
}

/** Everything that a record of any span says of itself: seals, chains without a gap, and each signature whose shift lies in it whole. */
export const checkRecord = (file: RecordFile): CheckedRecord => {
  const bad: Bad[] = [...entryFaults(file), ...chainFaults(file), ...gapFaults(file)]
  const shifts = new Map<string, ShiftFile['shift']>()
  for (const { entry, uncounted } of file.entries) {
    const data = uncounted || entry['kind'] !== 'signOff' ? undefined : signOff.safeParse(entry['data']).data
    if (!data || data.from < (file.span.from ?? Number.NEGATIVE_INFINITY) || data.to > (file.span.to ?? Number.POSITIVE_INFINITY)) continue
    shifts.set(`${data.date} ${data.shift}`, { id: data.shift, name: data.shift, date: data.date, from: data.from, to: data.to })
  }
  const { laboratory, timeZone, devices, entries } = file
  const checked = [...shifts.values()].map((shift) => {
    const { bad: own, ...signed } = checkSignatures({ format: 'bathkeeper-shift', v: 1, laboratory, timeZone, made: '', shift, server: { epoch: '', key: file.server.key }, devices, entries })
    bad.push(...own)
    return { shift, ...signed }
  })
  return { bad, shifts: checked }
}

/** An export gives each device's entries without a gap; a number that is missing was taken out of the file. */
const gapFaults = ({ entries }: RecordFile): Bad[] => {
  const last = new Map<string, number>()
  return [...entries].sort((a, b) => a.entry.seq - b.entry.seq).flatMap(({ entry }): Bad[] => {
    const before = last.get(entry.dev)
    last.set(entry.dev, entry.seq)
    return before === undefined || entry.seq <= before + 1 ? [] : [{ id: entry.id, why: `comes after number ${before} of its device: ${entry.seq - before - 1} between them are missing` }]
  })
}
