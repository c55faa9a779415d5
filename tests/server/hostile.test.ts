import { randomBytes } from 'node:crypto'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { canonical } from '../../src/record/canonical.ts'
import { sqliteDatabase } from '../../src/server/database/sqlite.ts'
import { sha256 } from '../../src/server/keys.ts'
import { authorizationText, requestText } from '../../src/wire/auth.ts'
import { Phone } from './phone.ts'
import { openServer, type TestServer } from './server.ts'

let server: TestServer
let supervisor: Awaited<ReturnType<TestServer['first']>>
beforeEach(async () => {
  server = await openServer()
  supervisor = await server.first()
})
afterEach(() => server.close())

const stored = async (): Promise<number> => (await server.parts.database.sql.selectFrom('entries').select('gseq').execute()).length
const codeOf = async (answer: Response): Promise<string> => ((await answer.json()) as { error: string }).error
const push = (entries: unknown) => ({ v: 1, dev: supervisor.phone.dev, epoch: supervisor.phone.epoch, entries })

describe('a hostile client', () => {
  it('is refused without a signature, and with that of another key', async () => {
    const bare = await server.ask(new Request('http://localhost/api/v1/pull?after=0'))
    expect([bare.status, await codeOf(bare)]).toEqual([401, 'nonce'])
    const thief = new Phone(server.ask)
    thief.dev = supervisor.phone.dev
    const answer = await thief.send('GET', '/api/v1/pull?after=0')
    expect([answer.status, await codeOf(answer)]).toEqual([401, 'unauthorised'])
  })

  it('cannot send a request a second time', async () => {
    const { phone } = supervisor
    const nonce = (await server.ask(new Request('http://localhost/api/v1/hello'))).headers.get('Next-Nonce')!
    const path = '/api/v1/me'
    const headers = { Authorization: authorizationText({ dev: phone.dev, nonce, sig: phone.sign(requestText({ method: 'GET', path, bodySha256: sha256(''), nonce })) }) }
    expect((await server.ask(new Request(`http://localhost${path}`, { headers }))).status).toBe(200)
    const again = await server.ask(new Request(`http://localhost${path}`, { headers }))
    expect([again.status, await codeOf(again)]).toEqual([401, 'nonce'])
  })

  it('cannot send a request a second time to a server that was started anew', async () => {
    const { phone } = supervisor
    const request = await phone.request('GET', '/api/v1/me')
    const again = request.clone()
    expect((await server.ask(request)).status).toBe(200)
    const restarted = await openServer({ database: sqliteDatabase(server.file), beside: server })
    const answer = await restarted.ask(again)
    expect([answer.status, await codeOf(answer)]).toEqual([401, 'nonce'])
    await restarted.close()
  })

  it('cannot slip in an entry with a forged signature, a wrong hash or a wrong link', async () => {
    const { phone } = supervisor
    const good = phone.entry()
    const forged = { ...good, sig: new Phone(server.ask).sign(`e1|${good.h}`) }
    expect((await phone.push([forged])).error?.code).toBe('signature')
    const changed = { ...good, entry: { ...good.entry, data: { text: 'changed on the way', about: 'general' } } }
    expect((await phone.push([changed])).error?.code).toBe('signature')
    phone.h = sha256('another chain')
    phone.seq = 0
    expect((await phone.push([phone.entry()])).error?.code).toBe('chain')
    expect(await stored()).toBe(0)
  })

  it('is refused with too large, too deep, compressed, mistyped or broken bodies, and nothing is stored', async () => {
    const { phone } = supervisor
    const deep = `${'['.repeat(200)}${']'.repeat(200)}`
    const tries: [string, unknown, Record<string, string>, string[]][] = [
      ['a body of 3 MiB', JSON.stringify(push([])) + ' '.repeat(3 << 20), {}, ['tooLarge']],
      ['a deep body', deep, {}, ['badRequest']],
      ['a compressed body', push([]), { 'Content-Encoding': 'gzip' }, ['encoded']],
      ['text', push([]), { 'Content-Type': 'text/plain' }, ['mediaType']],
      ['broken JSON', '{"v":1,', {}, ['badRequest']],
      ['no entries', push([]), {}, ['badRequest']],
      ['a field too many', { ...push([phone.entry()]), also: 1 }, {}, ['badRequest']],
      ['a prototype', '{"v":1,"__proto__":{"x":1}}', {}, ['badRequest']],
    ]
    for (const [name, body, headers, codes] of tries) {
      const answer = await phone.send('POST', '/api/v1/push', body, headers)
      expect(answer.status, name).toBeGreaterThanOrEqual(400)
      expect(answer.status, name).toBeLessThan(500)
      expect(codes, name).toContain(await codeOf(answer))
    }
    expect(await stored()).toBe(0)
  })

  it('cannot reach another file through the name of a photo', async () => {
    for (const name of ['..%2f..%2fserver-key.pem', 'a'.repeat(63), `${'a'.repeat(64)}%00`, '%2e%2e']) {
      const answer = await supervisor.phone.send('GET', `/api/v1/blob/${name}`)
      expect([400, 404], name).toContain(answer.status)
    }
  })

  it('cannot make a browser of somebody else act for it', async () => {
    const answer = await server.ask(new Request('http://localhost/api/v1/enrol', { method: 'POST', body: '{}', headers: { 'Content-Type': 'application/json', Origin: 'https://evil.example', 'Sec-Fetch-Site': 'cross-site' } }))
    expect([answer.status, await codeOf(answer)]).toEqual([403, 'crossSite'])
  })

  it('finds that a script in a text is kept as text and given back as JSON only', async () => {
    const { phone } = supervisor
    const text = '<script>alert(1)</script>"\u2028\r\nSet-Cookie: a=b'
    await phone.push([phone.entry('note', { text, about: 'general' })])
    const answer = await phone.send('GET', `/api/v1/pull?epoch=${phone.epoch}&after=0`)
    expect(answer.headers.get('Content-Type')).toContain('application/json')
    expect(answer.headers.get('X-Content-Type-Options')).toBe('nosniff')
    expect(answer.headers.get('Set-Cookie')).toBeNull()
    expect(((await answer.json()) as { entries: { entry: { data: { text: string } } }[] }).entries[0]!.entry.data.text).toBe(text)
  })

  it('gets a script nowhere but into free text: each field of an entry’s frame that holds one makes the entry invalid, or is refused', async () => {
    const { phone } = supervisor
    const script = '<img src=x onerror=alert(1)>'
    const frame = Object.keys(phone.entry().entry)
    ;[phone.seq, phone.h] = [0, (await server.parts.database.sql.selectFrom('devices').select('seed').executeTakeFirstOrThrow()).seed as never]
    const outcomes: Record<string, string> = {}
    for (const field of frame) {
      const [seq, h] = [phone.seq, phone.h]
      const given = phone.entry().entry
      const entry = { ...given, [field]: field === 'blobs' ? [script] : field === 'data' ? { text: 'x', about: script } : script }
      const sealed = { entry, h: sha256(canonical(entry)), sig: '' }
      sealed.sig = phone.sign(`e1|${sealed.h}`)
      phone.h = sealed.h
      const answer = await phone.push([sealed as never])
      outcomes[field] = answer.error?.code ?? (await phone.pullAll()).at(-1)!.status
      if (answer.error) [phone.seq, phone.h] = [seq, h]
    }
    expect(outcomes).toEqual({
      v: 'envelope', id: 'envelope', dev: 'envelope', seq: 'envelope', prev: 'envelope', kind: 'invalid', at: 'invalid', tz: 'valid', sess: 'invalid', mono: 'invalid', skew: 'invalid',
      op: 'invalid', data: 'invalid', blobs: 'invalid',
    })
    const page = await phone.send('GET', `/api/v1/pull?epoch=${phone.epoch}&after=0`)
    expect([page.headers.get('Content-Type'), page.headers.get('X-Content-Type-Options')]).toEqual(['application/json', 'nosniff'])
    // Names that people read are text too: no control characters, and nothing of them in a header.
    const named = new Phone(server.ask)
    await expect(named.enrol(await server.firstCode(), { name: `Eve\r\nSet-Cookie: a=b`, passphrase: 'silver nitrate in the dark' })).rejects.toThrow('400')
    const { digits } = await named.enrol(await server.firstCode(), { name: script, passphrase: 'silver nitrate in the dark' })
    expect(digits).toMatch(/^\d{6}$/)
    const people = await phone.send('GET', '/api/v1/people')
    expect(people.headers.get('Content-Type')).toContain('application/json')
    expect(JSON.stringify(await people.json())).toContain(script)
  })

  it('cannot pass a script off as a photo, though an entry names it', async () => {
    const { phone } = supervisor
    const bytes = '<script>alert(1)</script>'
    const given = phone.entry('note', { text: 'look', about: 'general' }).entry
    const entry = { ...given, blobs: [sha256(bytes)] }
    const h = sha256(canonical(entry))
    await phone.push([{ entry, h, sig: phone.sign(`e1|${h}`) }])
    const answer = await phone.send('PUT', `/api/v1/blob/${sha256(bytes)}`, bytes, { 'Content-Type': 'image/jpeg', 'Content-Length': String(bytes.length) })
    expect([answer.status, await codeOf(answer)]).toEqual([415, 'mediaType'])
    expect((await phone.send('GET', `/api/v1/blob/${sha256(bytes)}`)).status).toBe(404)
  })

  it('runs out of guesses at a one-time code and at a passphrase', async () => {
    const guesser = new Phone(server.ask)
    const codes: string[] = []
    for (let tries = 0; tries < 12; tries++) codes.push(await guesser.enrol('AAAAA-BBBBB').then(() => 'in', (error: Error) => error.message))
    expect(codes.every((it) => it.includes('codeUnknown') || it.includes('tooMany'))).toBe(true)
    expect(codes.at(-1)).toContain('429')
    const answers: number[] = []
    for (let tries = 0; tries < 12; tries++)
      answers.push((await supervisor.phone.send('POST', '/api/v1/presence', { person: supervisor.person, passphrase: `wrong ${tries}` })).status)
    expect(answers).not.toContain(200)
    expect(answers.at(-1)).toBe(429)
  })

  it('gets nowhere as a supervisor without the passphrase, or with a proof that has run out', async () => {
    const { phone } = supervisor
    const bare = await phone.send('POST', '/api/v1/codes')
    expect([bare.status, await codeOf(bare)]).toEqual([401, 'presence'])
    const proof = await server.prove(supervisor)
    server.later(11 * 60_000)
    const late = await phone.send('POST', '/api/v1/codes', undefined, phone.presence(proof))
    expect([late.status, await codeOf(late)]).toEqual([401, 'presence'])
  })

  it('leaves the server alive whatever bytes it sends to whichever address', async () => {
    const paths = ['/api/v1/push', '/api/v1/pull', '/api/v1/enrol', '/api/v1/report', '/api/v1/import', '/api/v1/presence', '/api/v1/blob/x', '/api/v1/nothing', '/api//', '/%ff', '/metrics']
    for (const path of paths)
      for (const method of ['GET', 'POST', 'PUT', 'DELETE', 'PATCH']) {
        const init = method === 'GET' ? { method } : { method, body: randomBytes(200), headers: { 'Content-Type': 'application/json' } }
        const answer = await server.ask(new Request(`http://localhost${path}`, init))
        expect(answer.status, `${method} ${path}`).not.toBe(500)
      }
    expect((await server.ask(new Request('http://localhost/healthz'))).status).toBe(200)
    expect(await stored()).toBe(0)
  })

  it('meets a strict content policy on every answer', async () => {
    for (const path of ['/', '/api/v1/hello', '/nowhere.js']) {
      const answer = await server.ask(new Request(`http://localhost${path}`))
      const policy = answer.headers.get('Content-Security-Policy') ?? ''
      for (const part of ["default-src 'self'", "script-src 'self' 'wasm-unsafe-eval'", "object-src 'none'", "base-uri 'none'", "frame-ancestors 'none'", "require-trusted-types-for 'script'"])
        expect(policy, path).toContain(part)
      expect(policy).not.toContain('unsafe-inline')
    }
  })
})
