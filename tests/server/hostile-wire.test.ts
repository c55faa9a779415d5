import { gzipSync } from 'node:zlib'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { sha256 } from '../../src/server/keys.ts'
import { letIn, type Phone, type Supervisor } from './phone.ts'
import { openServer, type TestServer } from './server.ts'
import { listenWith, raw } from './sockets.ts'

// What no browser sends: bytes on a real socket, from somebody who means harm, with a device's good signature where that gets further.
let server: TestServer
let supervisor: Supervisor
let phone: Phone
let port: number
let stop: () => Promise<void>
beforeEach(async () => {
  server = await openServer({ limits: { bodySilenceMs: 250, bodyMs: 1_500 } })
  supervisor = await server.first()
  phone = await letIn(supervisor)
  const listening = await listenWith(server.parts)
  port = listening.port
  stop = listening.close
})
afterEach(async () => {
  // Whatever it was: the server answers, and has kept nothing of it.
  const alive = await fetch(`http://127.0.0.1:${port}/healthz`)
  expect(await alive.json()).toMatchObject({ ok: true, gseq: 0 })
  expect(await server.parts.database.sql.selectFrom('entries').select('gseq').execute()).toEqual([])
  expect(await server.parts.database.sql.selectFrom('blobs').select('sha256').execute()).toEqual([])
  await stop()
  await server.close()
})

const crlf = '\r\n'
const head = (line: string, headers: Record<string, string>): string => `${line}${crlf}Host: 127.0.0.1:${port}${crlf}${Object.entries({ Connection: 'close', ...headers }).map(([name, value]) => `${name}: ${value}${crlf}`).join('')}${crlf}`

/** Headers of a push with a good signature over the body that is announced. */
const signedHead = async (body: string | Uint8Array<ArrayBuffer>, more: Record<string, string> = {}, method = 'POST', path = '/api/v1/push'): Promise<string> => {
  const { headers } = await phone.request(method, path, body)
  return head(`${method} ${path} HTTP/1.1`, { Authorization: headers.get('authorization')!, 'Content-Type': 'application/json', 'Content-Length': String(Buffer.byteLength(body)), ...more })
}
const pushBody = (): string => JSON.stringify({ v: 1, dev: phone.dev, epoch: phone.epoch, entries: [phone.entry()] })

describe('a hostile client on a real socket', { timeout: 30_000 }, () => {
  it('that falls silent in the middle of a body is given up with 408', async () => {
    const body = pushBody()
    const answer = await raw(port, [await signedHead(body), body.slice(0, 40)])
    expect([answer.status, answer.text]).toEqual([408, expect.stringContaining('"timeout"')])
  })

  it('that sends a body drop by drop is given up with 408 after the longest time for one', async () => {
    const body = pushBody()
    const drops = Array.from({ length: 60 }, (_, place) => body.slice(place, place + 1))
    const from = performance.now()
    const answer = await raw(port, [await signedHead(body), ...drops], { pauseMs: 60 })
    expect(answer.status).toBe(408)
    expect(performance.now() - from).toBeLessThan(10_000)
  })

  it('that sends its headers drop by drop is given up with 408', async () => {
    const answer = await raw(port, [...'POST /api/v1/push HTTP/1.1\r\nHost: x\r\nX-Slow: aaaaaaaaaaaaaaaaaaaaaaaaaa'], { pauseMs: 60 })
    expect(answer.status).toBe(408)
  })

  it('with forty silent connections keeps nobody else out', async () => {
    const body = pushBody()
    const heads = await Promise.all(Array.from({ length: 40 }, () => signedHead(body)))
    const silent = heads.map((it) => raw(port, [it, body.slice(0, 10)]))
    const hello = await fetch(`http://127.0.0.1:${port}/api/v1/hello`)
    expect(hello.status).toBe(200)
    expect(new Set((await Promise.all(silent)).map(({ status }) => status))).toEqual(new Set([408]))
  })

  it('that goes away in the middle of a body leaves nothing', async () => {
    const body = pushBody()
    await raw(port, [await signedHead(body), body.slice(0, body.length / 2)], { silenceMs: 20 })
  })

  it('is refused with 413 where a body is announced too large, or grows too large though it announced nothing', async () => {
    const announced = await raw(port, [await signedHead('', { 'Content-Length': String(64 << 20) })])
    expect([announced.status, announced.text]).toEqual([413, expect.stringContaining('"tooLarge"')])
    const { headers } = await phone.request('POST', '/api/v1/push', '')
    const chunked = head('POST /api/v1/push HTTP/1.1', { Authorization: headers.get('authorization')!, 'Content-Type': 'application/json', 'Transfer-Encoding': 'chunked' })
    const chunk = `10000${crlf}${'x'.repeat(0x10000)}${crlf}`
    const grown = await raw(port, [chunked, ...Array.from({ length: 24 }, () => chunk)])
    expect([grown.status, grown.text]).toEqual([413, expect.stringContaining('"tooLarge"')])
  })

  it('is refused with 415 for a compressed bomb, which nobody unpacks', async () => {
    const bomb = gzipSync(Buffer.alloc(64 << 20, ' '))
    for (const encoding of ['gzip', 'deflate', 'br', 'gzip, gzip', 'x-unknown']) {
      const before = process.memoryUsage().rss
      const answer = await raw(port, [await signedHead(new Uint8Array(bomb), { 'Content-Encoding': encoding }), bomb])
      expect([answer.status, answer.text], encoding).toEqual([415, expect.stringContaining('"encoded"')])
      expect(process.memoryUsage().rss - before, encoding).toBeLessThan(48 << 20)
    }
  })

  it('is refused for JSON that nests without end, repeats a key, or holds a number without end', async () => {
    const tries: [string, string, string][] = [
      ['brackets', `{"v":1,"entries":${'['.repeat(100_000)}`, 'badRequest'],
      ['objects', `${'{"a":'.repeat(50_000)}1${'}'.repeat(50_000)}`, 'badRequest'],
      ['a version twice', '{"v":1,"v":2,"dev":"x","epoch":"x","entries":[]}', 'unknownVersion'],
      ['a long number', `{"v":${'9'.repeat(100_000)}}`, 'unknownVersion'],
    ]
    for (const [name, body, code] of tries) {
      const answer = await raw(port, [await signedHead(body), body])
      expect([answer.status, answer.text], name).toEqual([400, expect.stringContaining(`"${code}"`)])
    }
  })

  it('cannot smuggle a second request in the body of a first', async () => {
    const inner = `GET /api/v1/me HTTP/1.1${crlf}Host: x${crlf}${crlf}`
    const both = await raw(port, [head('POST /api/v1/enrol HTTP/1.1', { Connection: 'keep-alive', 'Content-Type': 'application/json', 'Content-Length': '4', 'Transfer-Encoding': 'chunked' }), `0${crlf}${crlf}`, inner])
    expect([both.status, both.answers]).toEqual([400, 1])
    const twoLengths = await raw(port, [head('POST /api/v1/enrol HTTP/1.1', { Connection: 'keep-alive', 'Content-Length': '4' }).replace('Content-Length', `Content-Length: 40${crlf}Content-Length`), inner])
    expect([twoLengths.status, twoLengths.answers]).toEqual([400, 1])
    const oddCoding = await raw(port, [head('POST /api/v1/enrol HTTP/1.1', { Connection: 'keep-alive', 'Transfer-Encoding': 'xchunked', 'Content-Length': '4' }), inner])
    expect([400, 501]).toContain(oddCoding.status)
    expect(oddCoding.answers).toBe(1)
  })

  it('cannot put a line of its own into an answer, whatever header or address it sends it in', async () => {
    const injected = 'x%0d%0aSet-Cookie:%20a=b%0d%0a%0d%0a<script>'
    for (const line of [`GET /${injected} HTTP/1.1`, `GET /api/v1/blob/${injected} HTTP/1.1`, `GET /api/v1/pull?after=${injected} HTTP/1.1`]) {
      const answer = await raw(port, [head(line, { Origin: 'http://a\tb', 'If-None-Match': injected, 'X-Forwarded-Host': injected })])
      expect(answer.text.toLowerCase(), line).not.toMatch(/^set-cookie/m)
      expect(answer.answers, line).toBe(1)
    }
    const folded = await raw(port, [`GET /healthz HTTP/1.1${crlf}Host: x${crlf}X-A: b\rSet-Cookie: c=d${crlf}${crlf}`])
    expect(folded.text.toLowerCase()).not.toMatch(/^set-cookie/m)
    const many = await raw(port, [head('GET /healthz HTTP/1.1', { 'X-Large': 'y'.repeat(100_000) })])
    expect(many.status).toBe(431)
  })

  it('reaches no file by the name of a photo or of a page, however it spells the way', async () => {
    const names = ['../../server-key.pem', '..%2f..%2fserver-key.pem', '..%252f..%252fserver-key.pem', '....//server-key.pem', '%2e%2e/%2e%2e/server-key.pem', '..%5c..%5cserver-key.pem', '/etc/passwd', '%00', `${'a'.repeat(64)}%00.pem`, 'a'.repeat(63) + 'G', '~root']
    for (const name of names)
      for (const [method, path] of [['GET', `/api/v1/blob/${name}`], ['GET', `/${name}`], ['GET', `/assets/${name}`]] as const) {
        const answer = await raw(port, [head(`${method} ${path} HTTP/1.1`, {})])
        expect([400, 401, 404, 503], `${method} ${path}`).toContain(answer.status)
        expect(answer.text, `${method} ${path}`).not.toMatch(/PRIVATE KEY|root:/)
      }
    const bytes = Buffer.from([0xff, 0xd8, 0xff, 0])
    for (const name of ['../x', '..%2fx', 'A'.repeat(64), 'a'.repeat(65)]) {
      const put = await raw(port, [await signedHead(new Uint8Array(bytes), { 'Content-Type': 'application/octet-stream' }, 'PUT', new URL(`/api/v1/blob/${name}`, 'http://x').pathname), bytes])
      expect([400, 401, 404], name).toContain(put.status)
    }
  })

  it('is refused for a photo that is none, is not named, is too large or is not what its name says', async () => {
    const put = async (bytes: Buffer, name: string = sha256(bytes), more: Record<string, string> = {}): Promise<number> =>
      (await raw(port, [await signedHead(new Uint8Array(bytes), { 'Content-Type': 'application/octet-stream', ...more }, 'PUT', `/api/v1/blob/${name}`), bytes])).status
    expect(await put(Buffer.from([0xff, 0xd8, 0xff, 0]))).toBe(404)
    expect(await put(Buffer.from('<script>alert(1)</script>'))).toBe(404)
    expect(await put(Buffer.from([0xff, 0xd8, 0xff, 0]), 'b'.repeat(64))).toBe(400)
    expect(await put(Buffer.alloc(3 << 20))).toBe(413)
  })
})
