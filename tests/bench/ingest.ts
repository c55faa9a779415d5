import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { canonical } from '../../src/record/canonical.ts'
import type { Sealed } from '../../src/record/entry.ts'
import { signedText } from '../../src/record/seal.ts'
import { openFile } from '../../src/server/database/sqlite.ts'
import { readPublicKey, verifyTextAside } from '../../src/server/keys.ts'
import { openServer } from '../server/server.ts'
import { median, perSecondText, timed, type Figure } from './figure.ts'

const batch = 200

const phonesAtOnce = 4

/**
 * Signed entries into the server, from request to durable answer, a few phones at once, against (a) the same bytes as rows of a bare SQLite file with
 * `synchronous = FULL`, a transaction a batch, and (b) checking their P-256 signatures alone, on as many threads as the server uses. One batch of
 * each phone in turn.
 */
export const ingest = async (turns = 60): Promise<Figure[]> => {
  const folder = mkdtempSync(join(tmpdir(), 'bathkeeper-bench-'))
  const server = await openServer({ limits: { dailyBytes: 1e12 } })
  const raw = openFile(join(folder, 'raw.db'))
  try {
    raw.exec('CREATE TABLE entries (gseq INTEGER PRIMARY KEY, body TEXT NOT NULL, sig TEXT NOT NULL)')
    const insert = raw.prepare('INSERT INTO entries (body, sig) VALUES (?, ?)')
    const insertAll = raw.transaction((rows: readonly (readonly [string, string])[]) => { for (const [body, sig] of rows) insert.run(body, sig) })
    const supervisor = await server.first()
    const phones = [supervisor.phone]
    while (phones.length < phonesAtOnce) phones.push(await server.another(supervisor))
    const keys = phones.map(({ jwk }) => readPublicKey(jwk)!)
    const milliseconds = { server: [] as number[], raw: [] as number[], verify: [] as number[] }
    for (let turn = 0; turn < turns; turn++) {
      const batches = phones.map((phone): Sealed[] => Array.from({ length: batch }, () => phone.entry()))
      const rows = batches.map((entries) => entries.map(({ entry, sig }) => [canonical(entry), sig] as const))
      milliseconds.server.push(await timed(() => Promise.all(phones.map(async (phone, at) => {
        const { acks } = await phone.push(batches[at]!)
        if (acks.length !== batch) throw new Error(`${acks.length} of ${batch} acknowledged`)
      }))))
      milliseconds.raw.push(await timed(() => { for (const each of rows) insertAll(each) }))
      milliseconds.verify.push(await timed(async () => {
        const right = await Promise.all(batches.flatMap((entries, at) => entries.map(({ h, sig }) => verifyTextAside(keys[at]!, signedText(h), sig))))
        if (!right.every(Boolean)) throw new Error('a signature is wrong')
      }))
    }
    const rate = (list: readonly number[]): number => ((batch * phonesAtOnce) / median(list)) * 1000
    const [reached, bare, checked] = [rate(milliseconds.server), rate(milliseconds.raw), rate(milliseconds.verify)]
    const figure = perSecondText(reached)
    const what = `server ingest, signatures checked, batches of ${batch}, durable, ${phonesAtOnce} phones at once`
    const line = (against: string, ratio: number, least: number, note: string): Figure => ({
      what, figure, against, ratio, goal: `≥ ${least}`, isMet: ratio >= least, ...(ratio >= least ? {} : { note }),
    })
    return [
      line(`P-256 checks alone, same threads, ${perSecondText(checked)}`, reached / checked, 0.9,
        'one thread reads the request, makes each entry canonical, hashes it, reads it by its schema and writes its row, while the checks run on the others'),
      line(`bare SQLite, FULL, same bytes, ${perSecondText(bare)}`, reached / bare, 0.15,
        `0.15 of this is ${perSecondText(bare * 0.15)}, ${bare * 0.15 > checked ? 'more than' : `${(bare * 0.15 / checked).toFixed(2)} of what`} the checks alone allow here`),
    ]
  } finally {
    raw.close()
    await server.close()
    rmSync(folder, { recursive: true, force: true })
  }
}
