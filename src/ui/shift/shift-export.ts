import { instantWithOffset } from '../../device/clock.ts'
import type { LabPlan } from '../../plan/lab-plan.ts'
import type { ShiftSpan } from '../../plan/shift-time.ts'
import type { Ledger } from '../../projections/ledger.ts'
import type { Line } from '../../projections/line.ts'
import { linesOfShift } from '../../projections/shift-lines.ts'
import { shiftTable } from '../../projections/shift-table.ts'
import { signaturesOf } from '../../projections/shift-signatures.ts'
import type { DeviceId, EntryId } from '../../record/ids.ts'
import { shiftFileText, type ShiftFile } from '../../wire/shift-file.ts'
import type { Archive } from '../archive.ts'

interface Given {
  ledger: Ledger
  plan: LabPlan
  span: ShiftSpan
  archive: Archive
}

/** The signatures and countersigns under a shift. */
const signaturesUnder = ({ ledger, span }: Given, ofShift: readonly Line[]): Line[] =>
  signaturesOf(ledger, span, ofShift).flatMap(({ id, countersigns }) => [ledger.line(id)!, ...countersigns]).filter((line, index, all) => all.findIndex(({ id }) => id === line.id) === index)

/** Of each device the unbroken run from its first entry of the shift to its last; signatures stand where their chain has them, apart where it is far away. */
export const shiftProof = async (given: Given, now: number): Promise<string> => {
  const { ledger, plan, span, archive } = given
  const ofShift = linesOfShift(ledger, span)
  const runs = new Map<DeviceId, { from: number; to: number }>()
  for (const { dev, seq } of ofShift) {
    const run = runs.get(dev)
    runs.set(dev, run ? { from: Math.min(run.from, seq), to: Math.max(run.to, seq) } : { from: seq, to: seq })
  }
  const entries: ShiftFile['entries'] = []
  for (const [dev, { from, to }] of runs) entries.push(...(await archive.chain(dev, from, to)))
  for (const { id, dev, seq } of signaturesUnder(given, ofShift))
    if (!entries.some(({ entry }) => entry.id === id)) entries.push(...(await archive.chain(dev, seq, seq)))
  entries.sort((a, b) => (a.entry.dev < b.entry.dev ? -1 : a.entry.dev > b.entry.dev ? 1 : a.entry.seq - b.entry.seq))
  const server = await archive.server()
  if (!server) throw new Error('a shift was to be proved on a phone that knows no server')
  const used = new Set(entries.map(({ entry }) => entry.dev))
  const { shift, date, from, to } = span
  return shiftFileText({
    format: 'bathkeeper-shift', v: 1, laboratory: plan.name, made: instantWithOffset(now, -new Date(now).getTimezoneOffset()), timeZone: plan.timeZone,
    shift: { id: shift.id, name: shift.name, date, from, to },
    server: { epoch: server.epoch, key: server.key },
    devices: (await archive.devices()).filter(({ dev }) => used.has(dev)),
    entries,
  })
}

export const shiftCsv = async (given: Given, late: ReadonlySet<EntryId>): Promise<string> => {
  const { ledger, plan, span, archive } = given
  const ofShift = linesOfShift(ledger, span)
  const lines = [...ofShift, ...signaturesUnder(given, ofShift)]
  const seals = new Map<string, string>()
  const byDevice = new Map<DeviceId, number[]>()
  for (const { dev, seq } of lines) byDevice.set(dev, [...(byDevice.get(dev) ?? []), seq])
  for (const [dev, seqs] of byDevice)
    for (const { entry, sig } of await archive.chain(dev, Math.min(...seqs), Math.max(...seqs))) seals.set(entry.id, sig)
  return shiftTable(lines, { plan, late, signatureOf: (id) => seals.get(id) })
}
