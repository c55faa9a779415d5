import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { canonical } from '../../src/record/canonical.ts'
import type { Sealed } from '../../src/record/entry.ts'
import { signedText } from '../../src/record/seal.ts'
import { openFile } from '../../src/server/database/sqlite.ts'
import { readPublicKey, verifyText } from '../../src/server/keys.ts'
import { openServer } from '../server/server.ts'
import { median, perSecondText, timed, type Figure } from './figure.ts'

const batch = 200

/**
 * Signed entries into the server, from request to durable answer, against (a) the same bytes as rows of a bare SQLite file with `synchronous = FULL`,
 * a transaction a batch, and (b) checking their P-256 signatures alone. One batch of each in turn.
 */
export const ingest = async (batches = 60): Promise<Figure[]> => {
  const folder = mkdtempSync(join(tmpdir(), 'bathkeeper-bench-'))
  const server = await openServer({ limits: { dailyBytes: 1e12 } })
  const raw = openFile(join(folder, 'raw.db'))
  try {
    raw.exec('CREATE TABLE entries (gseq INTEGER PRIMARY KEY, body TEXT NOT NULL, sig TEXT NOT NULL)')
    const insert = raw.prepare('INSERT INTO entries (body, sig) VALUES (?, ?)')
    const insertAll = raw.transaction((rows: readonly (readonly [string, string])[]) => { for (const [body, sig] of rows) insert.run(body, sig) })
    const { phone } = await server.first()
    const key = readPublicKey(phone.jwk)
    if (!key) throw new Error('the key of the phone cannot be read')
    const seconds = { server: [] as number[], raw: [] as number[], verify: [] as number[] }
    for (let time = 0; time < batches; time++) {
      const entries: Sealed[] = Array.from({ length: batch }, () => phone.entry())
      const rows = entries.map(({ entry, sig }) => [canonical(entry), sig] as const)
      seconds.server.push(await timed(async () => {
        const { acks } = await phone.push(entries)
        if (acks.length !== batch) throw new Error(`${acks.length} of ${batch} acknowledged`)
      }))
      seconds.raw.push(await timed(() => insertAll(rows)))
      seconds.verify.push(await timed(() => {
        for (const { h, sig } of entries) if (!verifyText(key, signedText(h), sig)) throw new Error('a signature is wrong')
      }))
    }
    const rate = (list: readonly number[]): number => (batch / median(list)) * 1000
    const [reached, bare, checked] = [rate(seconds.server), rate(seconds.raw), rate(seconds.verify)]
    const figure = perSecondText(reached)
    const bound = 'beside the checks, which run on other threads, one thread reads the request, makes each entry canonical, hashes it twice and writes its row'
    const what = `server ingest, signatures checked, batches of ${batch}, durable, one phone at a time`
    return [
      { what, figure, against: `P-256 checks alone, ${perSecondText(checked)}`, ratio: reached / checked, goal: '≥ 0.9', isMet: reached / checked >= 0.9, ...(reached / checked >= 0.9 ? {} : { note: bound }) },
      { what, figure, against: `bare SQLite, FULL, same bytes, ${perSecondText(bare)}`, ratio: reached / bare, goal: '≥ 0.15', isMet: reached / bare >= 0.15 },
    ]
  } finally {
    raw.close()
    await server.close()
    rmSync(folder, { recursive: true, force: true })
  }
}
