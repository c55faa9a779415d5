import { mkdtempSync, rmSync, statSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { chainStart } from '../../src/wire/signed-texts.ts'
import { openFile, sqliteDatabase } from '../../src/server/database/sqlite.ts'
import { freePort, startServer } from '../server/kill.ts'
import { manyEntries } from './history.ts'
import { crowd, roundOf } from './crowd.ts'
import { median, millisecondsText, timed, type Figure } from './figure.ts'

const times = 15
const batch = 200
const page = 500

/** Rows of a record of years, put straight into the file: what is measured comes afterwards. */
const fill = (file: string, from: number, to: number, dev: string, bodies: readonly string[]): void => {
  const database = openFile(file)
  const insert = database.prepare(
    `INSERT INTO entries (gseq, dev, seq, id, kind, op, h, sig, body, recv_at, status, why, flags, sh) VALUES (?, ?, ?, ?, 'reading', NULL, ?, ?, ?, ?, 'valid', NULL, NULL, ?)`,
  )
  const some = database.transaction((first: number, last: number) => {
    for (let gseq = first; gseq <= last; gseq++) {
      const hex = gseq.toString(16).padStart(12, '0')
      insert.run(gseq, dev, gseq, `${hex.slice(0, 8)}-${hex.slice(8)}-7000-8000-${hex}`, hex.padStart(64, 'f'), 's'.repeat(86), bodies[gseq % bodies.length], gseq * 1000, hex.padStart(64, 'e'))
    }
  })
  for (let first = from + 1; first <= to; first += 10_000) some(first, Math.min(to, first + 9_999))
  database.prepare('UPDATE record_head SET gseq = ?, sh = ?').run(to, to ? to.toString(16).padStart(64, 'e') : chainStart)
  database.close()
}

/** What the server's work costs as its record grows: to start, to take in a batch, to give out a page of what is newest. */
export const serverGrowth = async (counts: readonly number[] = [10_000, 100_000, 1_000_000]): Promise<Figure[]> => {
  const folder = mkdtempSync(join(tmpdir(), 'bathkeeper-growth-'))
  const file = join(folder, 'bathkeeper.db')
  const port = await freePort()
  const bodies = manyEntries(2_000).map(({ entry }) => JSON.stringify(entry))
  const figures: Figure[] = []
  try {
    await (await startServer({ folder, port })).stop()
    const database = sqliteDatabase(file)
    const [filler, ...phones] = await crowd(database, [`http://localhost:${port}`], counts.length + 1)
    await database.close()
    let filled = 0
    for (const [index, count] of counts.entries()) {
      fill(file, filled, count, filler!.dev, bodies)
      let server = await startServer({ folder, port })
      const starts: number[] = []
      for (let time = 0; time < 3; time++) {
        await server.stop()
        starts.push(await timed(async () => (server = await startServer({ folder, port }))))
      }
      const phone = phones[index]!
      const pushes: number[] = []
      const pulls: number[] = []
      for (let time = 0; time < times; time++) {
        const entries = roundOf(phone, batch)
        pushes.push(await timed(() => phone.push(entries)))
        pulls.push(await timed(async () => (await phone.send('GET', `/api/v1/pull?epoch=${phone.epoch}&after=${count - page}&limit=${page}`)).arrayBuffer()))
      }
      await server.stop()
      filled = count + times * batch
      figures.push({
        what: `server with ${count.toLocaleString('en')} entries, ${Math.round(statSync(file).size / 1e6).toLocaleString('en')} MB: start; a batch of ${batch} in; the newest ${page} out`,
        figure: `${millisecondsText(median(starts))}; ${millisecondsText(median(pushes))}; ${millisecondsText(median(pulls))}`, against: '', ratio: null, goal: index ? 'no growth with history' : '', isMet: null,
      })
    }
    return figures
  } finally {
    rmSync(folder, { recursive: true, force: true })
  }
}
