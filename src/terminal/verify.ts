import { readFileSync } from 'node:fs'
import { pathToFileURL } from 'node:url'
import { recordFile } from '../wire/record-file.ts'
import { shiftFile } from '../wire/shift-file.ts'
import { checkRecord } from './verify/check-record.ts'
import { checkShift, thumbprints, type Bad, type CheckedSignature } from './verify/check-shift.ts'

const usage = `Checks a signed shift, or the record of any span, from its JSON export alone: hashes, signatures, chains, digest, and the server's word behind each signature.

  npm run --silent verify -- <file> [--server <thumbprint>]

--server: the thumbprint that the server's key must have, or how it begins (at least 16 figures); without it, compare the one that is printed.
Ends with 0 where everything holds, 1 where something does not (the first bad line is named), 2 where there is nothing to check.
`

export interface Verified {
  status: 0 | 1 | 2
  says: string[]
}

/** Line of the file on which an entry stands, counted from one. */
const lineOf = (text: string, id: string | undefined): number => {
  const index = id === undefined ? -1 : text.split('\n').findIndex((line) => line.startsWith('{"entry":') && line.includes(`"id":"${id}"`))
  return index < 0 ? 1 : index + 1
}

export const verifyText = (text: string, server?: string): Verified => {
  let raw: unknown
  try {
    raw = JSON.parse(text)
  } catch (error) {
    return { status: 2, says: [`This is not JSON: ${error instanceof Error ? error.message.replaceAll(/\s+/g, ' ') : ''}`] }
  }
  if (typeof raw === 'object' && raw !== null && 'format' in raw && raw.format === 'bathkeeper-record') return verifyRecordFile(raw, text, server)
  const parsed = shiftFile.safeParse(raw)
  if (!parsed.success) {
    const [issue] = parsed.error.issues
    return { status: 2, says: [`This is no export of a shift or of a record: ${issue?.path.join('.') ?? ''}: ${issue?.message ?? ''}`] }
  }
  const file = parsed.data
  const { bad, signatures, countersigns } = checkShift(file)
  const says = [`${file.laboratory} · ${file.shift.name}, ${file.shift.date} · ${file.entries.length} entries of ${file.devices.length} devices`, ...signatures.flatMap(signatureText), ...countersignText(countersigns)]
  return verdict(file, text, server, says, bad, signatures.length === 0 ? 'Nobody has signed this shift.' : undefined)
}

const verifyRecordFile = (raw: unknown, text: string, server: string | undefined): Verified => {
  const parsed = recordFile.safeParse(raw)
  if (!parsed.success) {
    const [issue] = parsed.error.issues
    return { status: 2, says: [`This is no export of a record: ${issue?.path.join('.') ?? ''}: ${issue?.message ?? ''}`] }
  }
  const file = parsed.data
  const { bad, shifts } = checkRecord(file)
  const instant = (time: number | null, open: string): string => (time === null ? open : new Date(time).toISOString())
  const says = [
    `${file.laboratory} · record from ${instant(file.span.from, 'the beginning')} to ${instant(file.span.to, 'the end')} · ${file.entries.length} entries of ${file.devices.length} devices`,
    ...shifts.flatMap(({ shift, signatures, countersigns }) => [`Shift ${shift.name}, ${shift.date}`, ...signatures.flatMap(signatureText), ...countersignText(countersigns)]),
  ]
  return verdict(file, text, server, says, bad, undefined)
}

const signatureText = (it: CheckedSignature): string[] => {
  const late = it.late ? `, ${it.late} came later (${it.lateNotCountersigned} not countersigned)` : ''
  const word = it.isProvisional ? (it.isConfirmed ? ', first provisional, then confirmed' : ', provisional: without the server’s word') : ''
  const own = it.own ? `, releases ${it.own} of the signer’s own exceptions (${it.ownNotCountersigned} not countersigned by another)` : ''
  return [`Signed by ${it.person}, ${it.at}: ${it.covered} entries${late}${own}${word}`, `  digest ${it.digest}`]
}

const countersignText = (countersigns: number): string[] => (countersigns ? [`Countersigned ${countersigns} ${countersigns === 1 ? 'time' : 'times'}`] : [])

/** `unsigned`: what is said where all holds and there is nothing that a signature stands under. */
const verdict = (file: Parameters<typeof thumbprints>[0], text: string, server: string | undefined, says: string[], found: readonly Bad[], unsigned: string | undefined): Verified => {
  const keys = thumbprints(file)
  const bad = server !== undefined && !keys.server.startsWith(server.toLowerCase()) ? [{ why: `names a server key with the thumbprint ${keys.server}` }, ...found] : found
  const all = [...says, `Server key ${keys.server}`, ...keys.devices.map((it) => `Device ${it.dev} (${it.name}), key ${it.thumbprint}`)]
  const [first] = bad
  if (!first) return unsigned ? { status: 1, says: [...all, unsigned] } : { status: 0, says: [...all, 'Everything holds.'] }
  return { status: 1, says: [...all, badText(text, first), ...(bad.length > 1 ? [`and ${bad.length - 1} more`] : [])] }
}

const badText = (text: string, { id, why }: Bad): string => (id === undefined ? `Line 1: the file ${why}` : `Line ${lineOf(text, id)}: entry ${id} ${why}`)

const main = ([name, option, server, ...rest]: string[]): number => {
  if (!name || (option !== undefined && (option !== '--server' || !/^[0-9a-fA-F]{16,64}$/.test(server ?? ''))) || rest.length) {
    process.stderr.write(usage)
    return 2
  }
  let text: string
  try {
    text = readFileSync(name, 'utf8')
  } catch (error) {
    process.stderr.write(`${name} cannot be read: ${error instanceof Error ? error.message : ''}\n`)
    return 2
  }
  const { status, says } = verifyText(text, server)
  process[status === 0 ? 'stdout' : 'stderr'].write(`${says.join('\n')}\n`)
  return status
}

if (process.argv[1] && import.meta.url === pathToFileURL(process.argv[1]).href) process.exitCode = main(process.argv.slice(2))
