import { spawnSync } from 'node:child_process'
import { copyFileSync, existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import Sqlite from 'better-sqlite3'
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest'
import { backupTo, keyBeside } from '../../src/server/backup/backup-file.ts'
import { restoreFrom } from '../../src/server/backup/restore-file.ts'
import { readFileDatabase } from '../../src/server/database/read-only.ts'
import { lockFolder } from '../../src/server/folder-lock.ts'
import { sha256 } from '../../src/server/keys.ts'
import { keyText } from '../../src/server/server-key.ts'
import { verifyRecord } from '../../src/server/verify/verify-record.ts'
import type { BadLink } from '../../src/server/verify/fault.ts'
import { demoLab } from '../../src/demo/lab.ts'
import { chainStart, linkText } from '../../src/wire/signed-texts.ts'
import type { Hash } from '../../src/record/ids.ts'
import { freePort, startServer } from './kill.ts'
import { Phone } from './phone.ts'
import { openServer } from './server.ts'

const top = fileURLToPath(new URL('../..', import.meta.url))
const helena = { name: 'Helena Sobral', passphrase: 'silver nitrate in the dark' }
const ask = (request: Request): Promise<Response> => fetch(request)

describe('a backup of the running server', { timeout: 90_000 }, () => {
  let folder: string
  beforeEach(() => {
    folder = mkdtempSync(join(tmpdir(), 'bathkeeper-backup-'))
  })
  afterEach(() => rmSync(folder, { recursive: true, force: true }))

  const command = (name: string, ...words: string[]) => {
    const { status, stdout, stderr } = spawnSync(process.execPath, ['--import', 'tsx', `src/terminal/${name}.ts`, ...words], {
      cwd: top, encoding: 'utf8', env: { ...process.env, BATHKEEPER_DATA: join(folder, 'data'), DATABASE_URL: '' },
    })
    return { status, text: stdout + stderr }
  }

  it('holds one moment of it, is put back only when it has stopped, and phones bring what came after', async () => {
    const data = join(folder, 'data')
    const file = join(folder, 'monday.db')
    const port = await freePort()
    let server = await startServer({ folder: data, port })
    try {
      const phone = new Phone(ask, server.origin)
      await phone.enrol(server.code!, helena)
      const sent = Array.from({ length: 30 }, () => phone.entry())
      await phone.push(sent)
      // Phones go on sending while the copy is made.
      let isDone = false
      const sending = (async () => {
        while (!isDone) {
          const more = [phone.entry(), phone.entry()]
          sent.push(...more)
          await phone.push(more)
        }
      })()
      const walked = await backupTo({ database: join(data, 'bathkeeper.db'), key: join(data, 'server-key.pem'), file })
      isDone = true
      await sending
      expect(walked.entries).toBeGreaterThanOrEqual(30)
      expect(readdirSync(folder).sort()).toEqual(['data', 'monday.db', 'monday.db.server-key.pem'])
      expect([statSync(file).mode & 0o777, statSync(keyBeside(file)).mode & 0o777]).toEqual([0o600, 0o600])
      const places = { database: join(data, 'bathkeeper.db'), key: join(data, 'server-key.pem'), file }
      await expect(backupTo(places)).rejects.toMatchObject({ code: 'exists' })
      const late = phone.entry()
      sent.push(late)
      await phone.push([late])
      const whileRunning = command('restore', file)
      expect([whileRunning.status, whileRunning.text]).toEqual([1, expect.stringMatching(/Another Bathkeeper runs on the data folder.*Nothing was touched/)])
      expect(await server.stop()).toBe(0)

      expect(await restoreFrom({ file, folder: data, now: Date.now(), epoch: 'e'.repeat(16), evenIfBroken: false })).toMatchObject({ gseq: walked.gseq })
      const replaced = readdirSync(data).find((name) => name.startsWith('replaced-'))!
      expect(await readFileDatabase(join(data, replaced), verifyRecord)).toMatchObject({ ok: true, entries: sent.length })

      server = await startServer({ folder: data, port })
      expect(server.code).toBeUndefined()
      const refused = await phone.push([phone.entry()])
      expect(refused.error).toMatchObject({ code: 'epoch', want: walked.entries + 1 })
      phone.epoch = refused.head.epoch
      for (let from = walked.entries; from < sent.length; from += 200) expect((await phone.push(sent.slice(from, from + 200))).error).toBeUndefined()
      expect((await phone.pullAll()).map(({ entry }) => entry.id)).toEqual(sent.map(({ entry }) => entry.id))
      const log = await readFileDatabase(join(data, 'bathkeeper.db'), (sql) => sql.selectFrom('log').select(['what', 'detail']).execute())
      expect(log.at(-1)).toEqual({ what: 'restored', detail: `from monday.db; replaced database kept as ${replaced}` })
      expect(await readFileDatabase(join(data, 'bathkeeper.db'), verifyRecord)).toMatchObject({ ok: true, entries: sent.length })
    } finally {
      await server.stop('SIGKILL')
    }
    const changed = new Sqlite(join(data, 'bathkeeper.db'))
    changed.prepare("update entries set body = replace(body, 'written in a test', 'written much later') where gseq = 7").run()
    changed.close()
    const bad = command('verify-record')
    expect([bad.status, bad.text]).toEqual([1, expect.stringMatching(/First bad link: entry 7 of the record, device [0-9a-f]{16}, its entry 7: its text does not give its hash/)])
    const tuesday = { database: join(data, 'bathkeeper.db'), key: join(data, 'server-key.pem'), file: join(folder, 'tuesday.db') }
    await expect(backupTo(tuesday)).rejects.toMatchObject({ code: 'broken' })
    expect(existsSync(tuesday.file)).toBe(false)
  })

  it('goes onto a new machine with the server’s key, and never without', async () => {
    const source = await openServer()
    const { phone } = await source.first()
    await phone.push([phone.entry(), phone.entry()])
    await source.parts.database.sql.insertInto('facts').values({ name: 'serverKey', value: keyText(source.parts.key) }).execute()
    const key = join(folder, 'server-key.pem')
    writeFileSync(key, source.privatePem)
    const file = join(folder, 'copy.db')
    await backupTo({ database: source.file, key, file })
    await source.close()
    const given = { file, now: Date.now(), epoch: 'e'.repeat(16), evenIfBroken: false }
    expect(await restoreFrom({ ...given, folder: join(folder, 'new') })).toMatchObject({ gseq: 2, replaced: undefined })
    expect(readFileSync(join(folder, 'new', 'server-key.pem'), 'utf8')).toBe(source.privatePem)
    rmSync(keyBeside(file))
    await expect(restoreFrom({ ...given, folder: join(folder, 'other') })).rejects.toMatchObject({ code: 'noKey' })
    expect(existsSync(join(folder, 'other', 'bathkeeper.db'))).toBe(false)
    await expect(restoreFrom({ ...given, file: join(folder, 'nothing.db'), folder })).rejects.toMatchObject({ code: 'noBackup' })
    const foreign = join(folder, 'foreign.db')
    new Sqlite(foreign).exec('create table t (a)').close()
    await expect(restoreFrom({ ...given, file: foreign, folder })).rejects.toMatchObject({ code: 'noRecord' })
  })

  it('replaces a damaged database, which is kept as it is', async () => {
    const source = await openServer()
    const { phone } = await source.first()
    await phone.push([phone.entry()])
    const key = join(folder, 'server-key.pem')
    writeFileSync(key, source.privatePem)
    const file = join(folder, 'copy.db')
    await backupTo({ database: source.file, key, file })
    await source.close()
    const damaged = Buffer.alloc(8192, 'no database at all ')
    writeFileSync(join(folder, 'bathkeeper.db'), damaged)
    const { replaced } = await restoreFrom({ file, folder, now: Date.now(), epoch: 'e'.repeat(16), evenIfBroken: false })
    expect(readFileSync(replaced!)).toEqual(damaged)
    expect(await readFileDatabase(join(folder, 'bathkeeper.db'), verifyRecord)).toMatchObject({ ok: true, entries: 1 })
  })

  it('waits for nobody: a second server on the same folder is refused, and a record whose key is gone is not opened under another', async () => {
    const data = join(folder, 'data')
    const port = await freePort()
    const first = await startServer({ folder: data, port })
    await expect(startServer({ folder: data, port: await freePort() })).rejects.toThrow(/Another Bathkeeper runs on the data folder/)
    expect(() => lockFolder(data)).toThrow(/in use/)
    await first.stop('SIGKILL')
    lockFolder(data).release()
    rmSync(join(data, 'server-key.pem'))
    await expect(startServer({ folder: data, port })).rejects.toThrow(/belongs to another server key/)
    expect(existsSync(join(data, 'server-key.pem'))).toBe(false)
  })
})

describe('a walk through the record', () => {
  let folder: string
  let good: string
  let devs: { helena: string; other: string }
  beforeAll(async () => {
    folder = mkdtempSync(join(tmpdir(), 'bathkeeper-verify-'))
    const server = await openServer()
    await server.parts.database.sql.insertInto('facts').values({ name: 'serverKey', value: keyText(server.parts.key) }).execute()
    const supervisor = await server.first()
    const { phone } = supervisor
    const other = await server.another(supervisor)
    await phone.push([phone.entry('plan', { plan: demoLab(), effectiveFrom: Date.now() }), phone.entry()])
    await other.push([other.entry(), other.entry(), other.entry()])
    const { head } = await phone.push([phone.entry()])
    await phone.push([phone.entry('signOff', { head, provisional: true })])
    await other.push([other.entry()])
    const photo = Buffer.from('not looked into here')
    await server.parts.database.sql
      .insertInto('blobs')
      .values({ sha256: sha256(photo), bytes: photo.length, type: 'image/jpeg', data: photo, dev: other.dev, recv_at: 0 })
      .execute()
    const [seq, h] = [other.seq, other.h]
    await other.push([other.entry()])
    ;[other.seq, other.h] = [seq, h]
    await other.push([other.entry('note', { text: 'another history', about: 'general' })])
    devs = { helena: phone.dev, other: other.dev }
    good = join(folder, 'good.db')
    writeFileSync(join(folder, 'key.pem'), server.privatePem)
    await backupTo({ database: server.file, key: join(folder, 'key.pem'), file: good })
    await server.close()
  })
  afterAll(() => rmSync(folder, { recursive: true, force: true }))

  const after = async (tamper: (file: Sqlite.Database) => void) => {
    const file = join(folder, 'tampered.db')
    copyFileSync(good, file)
    const opened = new Sqlite(file)
    opened.pragma('foreign_keys = OFF')
    tamper(opened)
    opened.close()
    return readFileDatabase(file, verifyRecord)
  }

  it('finds a good one whole, with its plan, photo, what was kept aside and the head in its sign-off', async () => {
    expect(await after(() => undefined)).toMatchObject({ ok: true, entries: 9, devices: 2, asides: 1, photos: 1, witnesses: 1 })
  })

  const run = (sql: string) => (file: Sqlite.Database): void => {
    expect(file.prepare(sql).run().changes, sql).toBeGreaterThan(0)
  }
  const cases: [string, (file: Sqlite.Database) => void, Partial<BadLink>][] = [
    ['a text that was changed', run("update entries set body = replace(body, 'written', 'wrıtten') where gseq = 4"), { fault: 'hash', gseq: 4 }],
    [
      'a text and its hash that were changed together',
      (file) => {
        const { body } = file.prepare('select body from entries where gseq = 4').get() as { body: string }
        const text = body.replace('written in a test', 'found in limits, pH 4.51')
        file.prepare('update entries set body = ?, h = ? where gseq = 4').run(text, sha256(text))
      },
      { fault: 'signature', gseq: 4 },
    ],
    ['a kind that was changed beside the text', run("update entries set kind = 'reading' where gseq = 5"), { fault: 'text', gseq: 5 }],
    ['an author that was changed beside the text', run("update entries set op = 'somebody' where gseq = 5"), { fault: 'text', gseq: 5 }],
    ['an entry that was taken out', run('delete from entries where gseq = 4'), { fault: 'chain', gseq: 5 }],
    ['the last entry of a device taken out of the middle', run('delete from entries where gseq = 7'), { fault: 'link', gseq: 8 }],
    ['an entry that was moved to the end', run('update entries set gseq = 500 where gseq = 5'), { fault: 'link', gseq: 6 }],
    ['a time of receipt that was changed', run('update entries set recv_at = recv_at - 3600000 where gseq = 3'), { fault: 'link', gseq: 3 }],
    ['an end that was cut off', run('delete from entries where gseq = 9'), { fault: 'head' }],
    ['a head that was set back with it', (file) => (run('delete from entries where gseq = 9')(file), run("update record_head set gseq = 8, sh = (select sh from entries where gseq = 8)")(file)), { fault: 'reach' }],
    ['a device’s key that was changed', run("update devices set key_x = key_y where dev in (select dev from entries where gseq = 3)"), { fault: 'device' }],
    ['a device that was taken out', run('delete from devices where dev in (select dev from entries where gseq = 3)'), { fault: 'device', gseq: 3 }],
    ['a person made a supervisor beside the plan', run("update plans set people = replace(people, '\"operator\"', '\"supervisor\"')"), { fault: 'plan', gseq: 1 }],
    ['a photo that was changed', run("update blobs set data = x'ffd8ff'"), { fault: 'photo' }],
    ['an entry kept aside that was changed', run("update asides set body = replace(body, 'another', 'an honest')"), { fault: 'hash' }],
  ]
  it.each(cases)('names %s', async (_, tamper, expected) => {
    expect(await after(tamper)).toMatchObject({ ok: false, ...expected })
  })

  it('is not deceived by a chain that was worked out anew: the head in a sign-off stands against it', async () => {
    const rebuilt = await after((file) => {
      run('delete from entries where gseq = 6')(file)
      file.prepare('update entries set recv_at = recv_at + 60000 where gseq = 2').run()
      const rows = file.prepare("select gseq, dev, h, recv_at from entries order by gseq").all() as { gseq: number; dev: string; h: Hash; recv_at: number }[]
      let sh: Hash = chainStart
      for (const row of rows) {
        sh = sha256(linkText({ before: sh, gseq: row.gseq, h: row.h, recvAt: row.recv_at }))
        file.prepare('update entries set sh = ? where gseq = ?').run(sh, row.gseq)
      }
      file.prepare('update record_head set sh = ?').run(sh)
    })
    // The phone's own chain already shows that its third entry is gone.
    expect(rebuilt).toMatchObject({ ok: false, fault: 'chain', gseq: 7, dev: devs.helena })
    const moved = await after((file) => {
      file.prepare('update entries set recv_at = recv_at + 60000 where gseq = 2').run()
      let sh: Hash = chainStart
      for (const row of file.prepare('select gseq, h, recv_at from entries order by gseq').all() as { gseq: number; h: Hash; recv_at: number }[]) {
        sh = sha256(linkText({ before: sh, gseq: row.gseq, h: row.h, recvAt: row.recv_at }))
        file.prepare('update entries set sh = ? where gseq = ?').run(sh, row.gseq)
      }
      file.prepare('update record_head set sh = ?').run(sh)
    })
    expect(moved).toMatchObject({ ok: false, fault: 'witness', gseq: 6 })
  })
})
