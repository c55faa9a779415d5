import { personOf } from '../plan/find.ts'
import type { LabPlan } from '../plan/lab-plan.ts'
import type { EntryId } from '../record/ids.ts'
import { substances } from '../science/substances-table.ts'
import { quantities } from '../science/units.ts'
import { csvText, type Cell } from './csv.ts'
import type { Line } from './line.ts'

/** Columns of the export: times are ISO 8601 with offset, units are UCUM codes. */
const columns = [
  'time', 'entered', 'received', 'kind', 'machine', 'station', 'what', 'keyed', 'value', 'unit', 'verdict', 'lot', 'text', 'person', 'person_id', 'device', 'seq', 'state', 'late', 'id',
  'hash', 'signature',
] as const
type Row = Partial<Record<(typeof columns)[number], Exclude<Cell, undefined>>>

interface Around {
  plan: LabPlan
  /** Entries that came after the signature. */
  late: ReadonlySet<EntryId>
  signatureOf(id: EntryId): string | undefined
}

/** The lines of a shift as a table for other programs. */
export const shiftTable = (lines: readonly Line[], around: Around): string =>
  csvText([columns, ...lines.map((line) => rowOf(line, around)).map((row) => columns.map((column) => row[column]))])

const rowOf = (line: Line, { plan, late, signatureOf }: Around): Row => {
  const iso = (time: number): string => Temporal.Instant.fromEpochMilliseconds(time).toZonedDateTimeISO(plan.timeZone).toString({ timeZoneName: 'never', fractionalSecondDigits: 3 })
  const signature = signatureOf(line.id)
  return {
    time: iso(line.time),
    entered: iso(line.enteredAt),
    ...(line.recvAt === undefined ? {} : { received: iso(line.recvAt) }),
    kind: line.kind,
    ...placeIn(plan, line),
    ...saidBy(plan, line),
    ...(line.person ? { person: personOf(plan, line.person)?.name ?? line.person, person_id: line.person } : {}),
    device: line.dev,
    seq: line.seq,
    state: line.withdrawnBy ? 'withdrawn' : line.amendedBy.length ? 'amended' : 'stands',
    late: late.has(line.id) ? 'yes' : 'no',
    id: line.id,
    hash: line.h,
    ...(signature ? { signature: { asIs: signature } } : {}),
  }
}

/** By their names, where the plan still has them. */
const placeIn = (plan: LabPlan, line: Line): Row => {
  const { check, station, machine } = line.data as { check?: string; station?: string; machine?: string }
  const at = station ?? plan.checks.find(({ id }) => id === check)?.station
  const found = plan.machines.find(({ id, stations }) => id === machine || stations.some((it) => it.id === at))
  const stationName = found?.stations.find(({ id }) => id === at)?.name ?? at
  return { ...(found ? { machine: found.name } : {}), ...(stationName ? { station: stationName } : {}) }
}

const saidBy = (plan: LabPlan, line: Line): Row => {
  switch (line.kind) {
    case 'reading':
      return { what: checkName(plan, line.data.check), keyed: line.data.keyed, value: line.data.value, unit: ucumOf(line.data.unit), verdict: line.data.verdict }
    case 'look':
      return { what: checkName(plan, line.data.check), verdict: line.data.right ? 'IN' : 'ACT', text: [line.data.right ? 'right' : 'not right', line.data.remark].filter(Boolean).join(': ') }
    case 'strip':
      return { what: checkName(plan, line.data.check), verdict: line.data.verdict, text: Object.entries(line.data.figures).map(([name, value]) => `${name} ${value}`).join('; ') }
    case 'stripBatch':
      return { what: checkName(plan, line.data.check), text: [line.data.batch, line.data.remark].filter(Boolean).join(': ') }
    case 'skip':
      return { what: checkName(plan, line.data.check), text: [line.data.reason, line.data.remark].filter(Boolean).join(': ') }
    case 'add': {
      const { material, poured, lot, overruled } = line.data
      const name = plan.materials.find(({ id }) => id === material)?.name ?? material
      return { what: name, keyed: poured.keyed, value: poured.amount, unit: poured.unit, ...(lot ? { lot } : {}), ...(overruled ? { text: overruled } : {}) }
    }
    case 'caution':
      return { what: line.data.card, text: line.data.lines.join('; ') }
    case 'run':
      return { what: line.data.state, ...(line.data.metresPerMinute === undefined ? {} : { value: line.data.metresPerMinute, unit: 'm/min' }) }
    case 'hold':
    case 'release':
      return { text: line.data.reason }
    case 'note':
      return { what: line.data.about, text: line.data.text }
    case 'close':
      return { what: line.data.reason, ...(line.data.remark ? { text: line.data.remark } : {}) }
    case 'amend':
    case 'withdraw':
      return { what: line.data.ref, text: line.data.why }
    case 'mix':
      return { what: plan.formulas?.find(({ id }) => id === line.data.formula)?.name ?? line.data.formula, value: line.data.litres, unit: 'L' }
    case 'mixStep':
      return { what: line.data.substance in substances ? substances[line.data.substance as keyof typeof substances].name : line.data.substance, value: line.data.amount, unit: line.data.unit, ...(line.data.lot ? { lot: line.data.lot } : {}), ...(line.data.celsius === undefined ? {} : { text: `${line.data.celsius} °C` }) }
    case 'mixCertificate':
      return { what: line.data.label, text: `pH ${line.data.pH}; specific gravity ${line.data.specificGravity}` }
    case 'mixEnd':
      return { what: line.data.how, ...(line.data.why ? { text: line.data.why } : {}) }
    case 'runOff': {
      const { destination } = line.data
      return { what: line.data.waste, value: line.data.litres, unit: 'L', text: [destination.to === 'drum' ? `drum ${destination.drum}` : destination.to, line.data.remark].filter(Boolean).join(': ') }
    }
    case 'drumOut':
      return { what: line.data.drum, text: line.data.to }
    case 'responseReset':
      return { ...(line.data.material ? { what: plan.materials.find(({ id }) => id === line.data.material)?.name ?? line.data.material } : {}), text: line.data.why }
    case 'acknowledge':
      return { what: line.data.of, text: line.data.remark }
    case 'handover':
      return { what: line.data.side, text: line.data.notes }
    case 'signOff':
      return { what: line.data.provisional ? 'provisional' : line.data.meaning, text: line.data.digest }
    case 'countersign':
      return { what: line.data.provisional ? 'provisional' : 'countersigned', text: line.data.late.join('; ') }
    case 'photo':
      return { what: line.data.of, text: line.data.sha256 }
    case 'plan':
      return { ...(line.data.why ? { text: line.data.why } : {}) }
    default:
      return {}
  }
}

const checkName = (plan: LabPlan, id: string): string => plan.checks.find((it) => it.id === id)?.name ?? id

const ucum = new Map<string, string>(Object.values(quantities).flatMap((units) => units.map(({ symbol, ucum: code }) => [symbol, code] as const)))
/** Of units that no calculation converts. A unit that UCUM does not have is an annotation, as the code allows. */
const others: Readonly<Record<string, string>> = { '1': '1', pH: '[pH]', A: 'A', V: 'V', Hz: 'Hz', '%': '%', mV: 'mV', D: '{D}' }

const ucumOf = (symbol: string): string => ucum.get(symbol) ?? others[symbol] ?? `{${symbol}}`
