import { PassThrough } from 'node:stream'
import pino from 'pino'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { createApp } from '../../src/server/app.ts'
import { clientOf, limitKey, proxyList } from '../../src/server/http/address.ts'
import { Limiter } from '../../src/server/limiter.ts'
import { letIn, type Supervisor } from './phone.ts'
import { openServer, type TestServer } from './server.ts'
import { listenWith } from './sockets.ts'

let server: TestServer
let supervisor: Supervisor
beforeEach(async () => {
  server = await openServer()
  supervisor = await server.first()
})
afterEach(() => server.close())
const get = (path: string, headers: Record<string, string> = {}): Promise<Response> => Promise.resolve(server.ask(new Request(`http://localhost${path}`, { headers })))

describe('a server in operation', () => {
  it('says that it lives, and how far its record goes', async () => {
    await supervisor.phone.push([supervisor.phone.entry()])
    expect(await (await get('/healthz')).json()).toEqual({ ok: true, gseq: 1, version: 'test' })
    await server.parts.database.sql.schema.dropTable('record_head').execute()
    expect((await get('/healthz')).status).toBe(500)
  })

  it('gives its measures to a known asker only, each line as Prometheus reads it', async () => {
    await supervisor.phone.push([supervisor.phone.entry(), supervisor.phone.entry('note', { text: '' })])
    expect((await get('/metrics')).status).toBe(403)
    expect((await get('/metrics', { Authorization: 'Bearer a token of another' })).status).toBe(403)
    const answer = await get('/metrics', { Authorization: 'Bearer a token of the tests' })
    expect(answer.headers.get('Content-Type')).toBe('text/plain; version=0.0.4; charset=utf-8')
    const lines = (await answer.text()).trimEnd().split('\n')
    // The text format, version 0.0.4: comments, or a name, labels in quotes and a number.
    for (const line of lines) expect(line).toMatch(/^(# (HELP [a-z_]+ .+|TYPE [a-z_]+ (counter|gauge|histogram))|[a-z_]+(\{[a-zA-Z_]+="[^"]*"(,[a-zA-Z_]+="[^"]*")*\})? -?[\d.e+-]+)$/)
    expect(lines).toEqual(expect.arrayContaining(['bathkeeper_entries_stored_total{status="valid"} 1', 'bathkeeper_entries_stored_total{status="invalid"} 1', 'bathkeeper_record_head 2']))
    const named = lines.filter((line) => !line.startsWith('#')).map((line) => /^[a-z_]+/.exec(line)![0].replace(/_(bucket|sum|count)$/, ''))
    const typed = new Set(lines.filter((line) => line.startsWith('# TYPE')).map((line) => line.split(' ')[2]))
    expect(named.filter((name) => !typed.has(name))).toEqual([])
  })

  it('logs one JSON line a request, and never what it carried', async () => {
    const out = new PassThrough()
    let text = ''
    out.on('data', (chunk: Buffer) => (text += chunk.toString()))
    const app = createApp({ ...server.parts, log: pino({ level: 'info' }, out) })
    await app.request(await supervisor.phone.request('POST', '/api/v1/presence', JSON.stringify({ person: supervisor.person, passphrase: supervisor.passphrase })))
    const line = JSON.parse(text.trim()) as Record<string, unknown>
    expect(line).toMatchObject({ route: 'presence', method: 'POST', status: 200, dev: supervisor.phone.dev })
    expect(text).not.toContain(supervisor.passphrase)
    expect(text).not.toMatch(/authorization|proof/i)
  })

  it('ends open boards when it stops, telling them when to come again', async () => {
    const stopping = new AbortController()
    const app = createApp({ ...server.parts, stopping: stopping.signal })
    const board = await app.request(await supervisor.phone.request('GET', '/api/v1/live'))
    const reader = board.body!.pipeThrough(new TextDecoderStream()).getReader()
    expect((await reader.read()).value).toContain('event: head')
    stopping.abort()
    expect((await reader.read()).value).toContain('event: bye\ndata: {"pauseMs":2000}')
    expect((await reader.read()).done).toBe(true)
  })
})

describe('how often one may ask', () => {
  it('is counted for each device by itself, and comes back with time', async () => {
    await server.close()
    server = await openServer({ limits: { device: { burst: 5, perSecond: 1 } } })
    supervisor = await server.first()
    const { phone } = supervisor
    const statuses: number[] = []
    for (let asked = 0; asked < 8; asked++) statuses.push((await phone.send('GET', '/api/v1/me')).status)
    expect(statuses.slice(0, 5)).toEqual([200, 200, 200, 200, 200])
    const refused = await phone.send('GET', '/api/v1/me')
    expect([refused.status, Number(refused.headers.get('Retry-After')) >= 1, (await refused.json()) as unknown]).toMatchObject([429, true, { error: 'tooMany' }])
    server.later(60_000)
    const other = await letIn(supervisor)
    expect((await other.send('GET', '/api/v1/me')).status).toBe(200)
    expect((await phone.send('GET', '/api/v1/me')).status).toBe(200)
  })

  it('is counted for strangers by address, and a wrong signature is a stranger’s', async () => {
    await server.close()
    server = await openServer({ limits: { stranger: { burst: 6, perSecond: 0.1 } } })
    const enrol = async (): Promise<number> =>
      (await server.ask(new Request('http://localhost/api/v1/enrol', { method: 'POST', body: '{}', headers: { 'Content-Type': 'application/json' } }))).status
    const statuses: number[] = []
    for (let asked = 0; asked < 9; asked++) statuses.push(await enrol())
    expect(statuses.slice(0, 6).every((status) => status === 400)).toBe(true)
    expect(statuses.slice(6)).toEqual([429, 429, 429])
  })

  it('is a bucket: so many at once, then so many a second, each key by itself', () => {
    let now = 0
    const limiter = new Limiter({ burst: 3, perSecond: 2 }, () => now)
    const ok = (key = 'a'): boolean => limiter.take(key).ok
    expect([ok(), ok(), ok(), ok(), ok('b')]).toEqual([true, true, true, false, true])
    expect(limiter.take('a')).toEqual({ ok: false, retryAfter: 1 })
    now += 500
    expect([ok(), ok()]).toEqual([true, false])
    now += 3_600_000
    expect([ok(), ok(), ok(), ok()]).toEqual([true, true, true, false])
  })

  it('takes all addresses of one IPv6 network for one', () => {
    expect(limitKey('2001:db8:1:2:aaaa::1')).toBe(limitKey('2001:db8:1:2:bbbb:cccc:dddd:eeee'))
    expect(limitKey('2001:db8:1:3::1')).not.toBe(limitKey('2001:db8:1:2::1'))
    expect(limitKey('10.0.4.20')).toBe('10.0.4.20')
  })
})

describe('a proxy before the server', () => {
  const from = (peer: string, headers: Record<string, string>, trusted: readonly string[], isHttps = false) =>
    clientOf({ env: { incoming: { socket: { remoteAddress: peer } } }, req: { header: (name: string) => headers[name] } } as never, proxyList(trusted), isHttps)
  const headers = { host: 'bath.lab', 'x-forwarded-for': '203.0.113.9, 198.51.100.7, 10.0.0.5', 'x-forwarded-proto': 'https', 'x-forwarded-host': 'phones.lab' }

  it('is believed only where it is on the list, and of its addresses only the last that no trusted one has', () => {
    expect(from('192.0.2.1', headers, ['loopback'])).toEqual({ address: '192.0.2.1', isHttps: false, host: 'bath.lab' })
    expect(from('127.0.0.1', headers, ['loopback'])).toEqual({ address: '10.0.0.5', isHttps: true, host: 'phones.lab' })
    expect(from('127.0.0.1', headers, ['loopback', '10.0.0.0/8'])).toMatchObject({ address: '198.51.100.7' })
    expect(from('::ffff:10.0.0.5', { host: 'x', 'x-forwarded-for': 'not an address' }, ['10.0.0.0/8'])).toEqual({ address: '10.0.0.5', isHttps: false, host: 'x' })
    for (const wrong of ['everybody', '10.0.0', '10.0.0.0/99']) expect(() => proxyList([wrong]), wrong).toThrow()
  })

  it('makes the connection count as https, so that browsers are told to keep to it', async () => {
    const proxied = await listenWith({ ...server.parts, trustedProxies: ['loopback'] })
    const bare = await listenWith(server.parts)
    try {
      const ask = (origin: string) => fetch(`${origin}/healthz`, { headers: { 'X-Forwarded-Proto': 'https' } })
      expect((await ask(proxied.origin)).headers.get('Strict-Transport-Security')).toBe('max-age=15552000')
      expect((await ask(bare.origin)).headers.get('Strict-Transport-Security')).toBeNull()
    } finally {
      await proxied.close()
      await bare.close()
    }
  })
})

describe('every answer, whatever it is', () => {
  it('carries the content policy and the other headers that shut a page in', async () => {
    const { phone } = supervisor
    const answers = [
      await get('/'), await get('/nowhere.js'), await get('/api/v1/hello'), await get('/api/v1/pull?after=0'), await get('/api/nothing'), await get('/metrics'), await get('/healthz'),
      await get('/ca.pem'), await phone.send('GET', '/api/v1/me'), await phone.send('POST', '/api/v1/push', '{'), await phone.send('GET', '/api/v1/live'),
    ]
    expect(new Set(answers.map(({ status }) => status)).size).toBeGreaterThan(3)
    for (const answer of answers) {
      const names = ['Content-Security-Policy', 'Cross-Origin-Opener-Policy', 'Cross-Origin-Resource-Policy', 'X-Content-Type-Options', 'X-Frame-Options', 'Referrer-Policy', 'Permissions-Policy']
      expect(names.filter((name) => !answer.headers.get(name)), `${answer.status}`).toEqual([])
      expect(answer.headers.get('Content-Security-Policy')).toMatch(/default-src 'self'; script-src 'self' 'wasm-unsafe-eval'; .*frame-ancestors 'none'; .*require-trusted-types-for 'script'/)
      expect(answer.headers.get('Content-Security-Policy')).not.toMatch(/unsafe-inline|unsafe-eval'(?<!wasm-unsafe-eval')|\*/)
      expect(answer.headers.get('Access-Control-Allow-Origin')).toBeNull()
      await answer.body?.cancel()
    }
  })
})
