import type { LabPlan } from '../../plan/lab-plan.ts'
import type { Line } from '../../projections/line.ts'
import { shiftTable } from '../../projections/shift-table.ts'
import { signaturesOf } from '../../projections/shift-signatures.ts'
import { linesOfShift } from '../../projections/shift-lines.ts'
import type { DeviceId, EntryId } from '../../record/ids.ts'
import type { Archive } from '../archive.ts'

/** Every entry that speaks for an instant of a span, as a table; undefined where there is none. */
export const recordTable = async (archive: Archive, plan: LabPlan, { from = Number.NEGATIVE_INFINITY, to = Number.POSITIVE_INFINITY }: { from?: number; to?: number }): Promise<string | undefined> => {
  const { ledger } = await archive.whole()
  const lines = ledger.lines.filter(({ time }) => time >= from && time < to)
  if (lines.length === 0) return undefined
  const seals = new Map<string, string>()
  const byDevice = new Map<DeviceId, number[]>()
  for (const { dev, seq } of lines) byDevice.set(dev, [...(byDevice.get(dev) ?? []), seq])
  for (const [dev, seqs] of byDevice) for (const { entry, sig } of await archive.chain(dev, Math.min(...seqs), Math.max(...seqs))) seals.set(entry.id, sig)
  // Late is what came after the signature of its own shift.
  const late = new Set<EntryId>()
  for (const { data } of lines.filter((line): line is Extract<Line, { kind: 'signOff' }> => line.kind === 'signOff')) {
    const shift = plan.shifts.find(({ id }) => id === data.shift)
    if (!shift) continue
    const span = { shift, date: data.date, from: data.from, to: data.to }
    for (const signature of signaturesOf(ledger, span, linesOfShift(ledger, span))) for (const id of signature.late) late.add(id)
  }
  return shiftTable(lines, { plan, late, signatureOf: (id) => seals.get(id) })
}
