import { readFileSync } from 'node:fs'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { insertDevice } from '../../src/server/database/devices.ts'
import { verifyRecord } from '../../src/server/verify/verify-record.ts'
import type { HelloAnswer } from '../../src/wire/hello.ts'
import { wireVersion, type PushAnswer } from '../../src/wire/messages.ts'
import { openServer, type TestServer } from './server.ts'

/** As a phone of version 1 wrote it, with its key; `wire-1/make.ts` made it, once. */
interface OldFile {
  key: { x: string; y: string }
  thumbprint: string
  seed: string
  statuses: string[]
  file: { dev: string; epoch: string; entries: { entry: { id: string; seq: number } }[] }
}
const old = JSON.parse(readFileSync(new URL('wire-1/file.json', import.meta.url), 'utf8')) as OldFile

let server: TestServer
beforeEach(async () => {
  server = await openServer()
  await insertDevice(server.parts.database.sql, {
    dev: old.file.dev, name: 'Phone of version 1', key_x: old.key.x, key_y: old.key.y, thumbprint: old.thumbprint, state: 'enrolled', epoch: old.file.epoch, seed: old.seed,
    last_seq: 0, last_hash: old.seed, enrolled_at: 0, heard_at: null, report: null, report_at: null, quota_day: 0, quota_bytes: 0,
  })
})
afterEach(() => server.close())

describe('the wire through its versions', () => {
  it('says which versions the server speaks: its own and, but for the first, the one before', async () => {
    const { wire } = (await (await server.ask(new Request('http://localhost/api/v1/hello'))).json()) as HelloAnswer
    expect(wire).toEqual({ oldest: Math.max(1, wireVersion - 1), newest: wireVersion })
  })

  it('takes in what was written under version 1, entry by entry, as it was judged then', async () => {
    const { phone } = await server.first()
    const answer = await phone.send('POST', '/api/v1/import', old.file)
    expect(answer.status, await answer.clone().text()).toBe(200)
    expect(((await answer.json()) as PushAnswer).acks.map(({ id, seq }) => [id, seq])).toEqual(old.file.entries.map(({ entry }) => [entry.id, entry.seq]))
    expect((await phone.pullAll()).map(({ status }) => status)).toEqual(old.statuses)
    expect(await server.parts.database.snapshot(verifyRecord)).toMatchObject({ ok: true, entries: old.statuses.length })
  })

  it('refuses a version that it does not speak with the one that it does, and keeps nothing', async () => {
    const { phone } = await server.first()
    for (const v of [0, wireVersion + 1, 'x']) {
      const answer = await phone.send('POST', '/api/v1/push', { v, dev: phone.dev, epoch: phone.epoch, entries: [phone.entry()] })
      expect([answer.status, (await answer.json()) as unknown]).toEqual([400, { error: 'unknownVersion', detail: String(wireVersion) }])
    }
    expect(await phone.pullAll()).toEqual([])
  })
})
