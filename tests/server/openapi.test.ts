import { readFileSync } from 'node:fs'
import { Ajv2020, type ValidateFunction } from 'ajv/dist/2020.js'
import fc from 'fast-check'
import * as z from 'zod'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { kinds, type Kind } from '../../src/record/kinds.ts'
import { openApi } from '../../src/server/openapi.ts'
import { sha256 } from '../../src/server/keys.ts'
import { verifyRecord } from '../../src/server/verify/verify-record.ts'
import { presenceHeader } from '../../src/wire/auth.ts'
import { routes, type Route, type RouteName } from '../../src/wire/routes.ts'
import type { Sealed } from '../../src/record/entry.ts'
import { fromSchema, type Json } from './openapi/arbitrary.ts'
import type { Phone } from './phone.ts'
import { openServer, type TestServer } from './server.ts'

interface Operation {
  operationId: string
  security: Json[]
  parameters: { name: string; in: 'path' | 'query'; required: boolean; schema: Json }[]
  requestBody?: { content: Record<string, { schema: Json }> }
  responses: Record<string, { description: string; content: Record<string, { schema: Json }> }>
}

const described = openApi('0.0.0') as { paths: Record<string, Record<string, Operation>>; components: { schemas: Record<string, Json> } }
const operations = Object.entries(described.paths).flatMap(([path, methods]) => Object.entries(methods).map(([method, operation]) => ({ path, method: method.toUpperCase(), operation })))

const ajv = new Ajv2020({ strict: false, allErrors: false, validateFormats: false })
// Its dynamic reference to whatever dialect the Schema Objects are in means, with none named, the place it stands for; Ajv resolves it to the whole document.
const oas = readFileSync(new URL('openapi/oas-3.1.schema.json', import.meta.url), 'utf8').replaceAll('"$dynamicRef": "#meta"', '"$ref": "#/$defs/schema"')
ajv.addSchema(JSON.parse(oas) as Json, 'oas')

const resolved = (schema: Json): Json => {
  const ref = schema['$ref']
  return typeof ref === 'string' ? described.components.schemas[ref.replace('#/components/schemas/', '')]! : schema
}
const compiled = new Map<Json, ValidateFunction>()
const validator = (schema: Json): ValidateFunction => {
  const real = resolved(schema)
  let made = compiled.get(real)
  if (!made) compiled.set(real, (made = ajv.compile(real)))
  return made
}

describe('the description of the API', () => {
  it('is an OpenAPI 3.1 document by the OpenAPI Initiative’s own schema', () => {
    const isDocument = ajv.getSchema('oas')!
    expect(isDocument(described), JSON.stringify(isDocument.errors)).toBe(true)
    expect([isDocument({ ...described, openapi: '3.0.3' }), isDocument({ ...described, info: {} })]).toEqual([false, false])
  })

  it('names every route of the wire’s table, and nothing else', () => {
    const there = operations.map(({ path, method, operation }) => `${operation.operationId} ${method} ${path}`)
    expect(there.sort()).toEqual(Object.entries(routes).map(([name, { method, path }]) => `${name} ${method} ${path}`).sort())
  })

  it('declares each place in a path and each header that a route asks for', () => {
    for (const { path, operation } of operations) {
      const places = [...path.matchAll(/\{(\w+)\}/g)].map(([, name]) => name)
      expect(operation.parameters.filter((it) => it.in === 'path').map(({ name }) => name), path).toEqual(places)
      for (const { in: place, required } of operation.parameters) if (place === 'path') expect(required).toBe(true)
      const { who } = routes[operation.operationId as RouteName] as Route
      const needed = operation.security.flatMap((one) => Object.keys(one))
      expect(needed, path).toEqual(who === 'anyone' ? [] : who === 'supervisor' ? ['Device', 'Presence'] : ['Device'])
    }
  })

  it('holds only schemas that are JSON Schema 2020-12, and refers to none that is missing', () => {
    const schemas = operations.flatMap(({ operation }) => [
      ...operation.parameters.map(({ schema }) => schema),
      ...Object.values(operation.requestBody?.content ?? {}).map(({ schema }) => schema),
      ...Object.values(operation.responses).flatMap(({ content }) => Object.values(content).map(({ schema }) => schema)),
    ])
    expect(schemas.length).toBeGreaterThan(100)
    for (const schema of schemas) {
      expect(resolved(schema), JSON.stringify(schema)).toBeDefined()
      expect(() => validator(schema)).not.toThrow()
    }
  })
})

describe('every endpoint, asked whatever its description allows and more', { timeout: 120_000 }, () => {
  let server: TestServer
  let supervisor: { phone: Phone; person: string; passphrase: string }
  let other: Phone
  let proof: string
  let photo: string
  const answered = new Map<string, Set<number>>()

  beforeAll(async () => {
    server = await openServer({ limits: { stranger: { burst: 1e6, perSecond: 1e6 }, device: { burst: 1e6, perSecond: 1e6 }, passphrasesAtOnce: 2 } })
    supervisor = await server.first()
    other = await server.another(supervisor)
    proof = await server.prove(supervisor)
    const bytes = Buffer.from([0xff, 0xd8, 0xff, 1])
    photo = sha256(bytes)
    await server.parts.database.sql.insertInto('blobs').values({ sha256: photo, bytes: 4, type: 'image/jpeg', data: bytes, dev: other.dev, recv_at: 1 }).execute()
    await supervisor.phone.push([supervisor.phone.entry()])
  })
  afterAll(() => server.close())

  // Not the supervisor who asks: with a passphrase set anew, the proof of presence would hold no longer.
  const there = (name: string): string => ({ dev: other.dev as string, sha256: photo, person: 'somebody' })[name] ?? name

  /** A path's places: what is there, what could be there, and what breaks an address. */
  const placeFor = (name: string, schema: Json): fc.Arbitrary<string> => {
    return fc.oneof(
      { weight: 3, arbitrary: fc.constant(there(name)) },
      { weight: 3, arbitrary: fromSchema(schema).map(String) },
      { weight: 1, arbitrary: fc.constantFrom('..', '%00', '../../x', '%2e%2e%2f', "'", 'é') },
    )
  }

  const ask = async (method: string, path: string, signer: 'supervisor' | 'device' | 'nobody', body: string | Uint8Array<ArrayBuffer> | undefined, extra: Record<string, string>) => {
    if (signer === 'nobody') return server.ask(new Request(`http://localhost${path}`, { method, headers: { 'Content-Type': 'application/json', ...extra }, ...(body === undefined ? {} : { body }) }))
    // What a browser would make of the address, since that is what is signed.
    const url = new URL(`http://localhost${path}`)
    return server.ask(await supervisor.phone.request(method, url.pathname + url.search, body, { ...(signer === 'supervisor' ? { [presenceHeader]: proof } : {}), ...extra }))
  }

  /** The answer is one that the description knows: its status, its code among those of the status, its content. */
  const mustBeDescribed = async (answer: Response, operation: Operation, said: string): Promise<void> => {
    const response = operation.responses[String(answer.status)]
    expect(answer.status, said).not.toBe(500)
    expect(response, `${said}: ${answer.status} ${response ? '' : await answer.clone().text()}`).toBeDefined()
    const type = (answer.headers.get('Content-Type') ?? '').split(';')[0]!
    expect(Object.keys(response!.content), said).toContain(type)
    if (type === 'text/event-stream') return answer.body?.cancel()
    if (type !== 'application/json') return
    const value = (await answer.json()) as { error?: string }
    const fits = validator(response!.content['application/json']!.schema)
    expect(fits(value), `${said}: ${JSON.stringify(fits.errors)} ${JSON.stringify(value).slice(0, 300)}`).toBe(true)
    if (answer.status !== 200) expect(response!.description.split(', '), said).toContain(value.error)
  }

  const goodBodies: Readonly<Record<string, string>> = {
    report: JSON.stringify({ waiting: 0, oldestWaitingAt: null, waitingBlobs: 0, skew: null, persisted: null, app: 'test', witness: null }),
    setPassphrase: JSON.stringify({ passphrase: 'fixer smells of sulfur', name: 'Somebody' }),
    end: JSON.stringify({ state: 'retired', why: 'no longer used' }),
  }
  const slow = new Set<string>(['presence', 'setPassphrase'] satisfies RouteName[])

  it.each(operations.map(({ operation, ...it }) => [operation.operationId, { ...it, operation }] as const))('%s', async (name, { path, method, operation }) => {
    const bodySchema = operation.requestBody?.content['application/json']?.schema
    const takesBytes = operation.requestBody !== undefined && !bodySchema
    const json = bodySchema === undefined ? fc.constant(undefined) : fc.oneof({ weight: 6, arbitrary: fromSchema(bodySchema).map((it) => JSON.stringify(it)) }, { weight: 1, arbitrary: fc.string() })
    const request = fc.record({
      places: fc.record(Object.fromEntries(operation.parameters.filter((it) => it.in === 'path').map((it) => [it.name, placeFor(it.name, it.schema)]))),
      query: fc.record(Object.fromEntries(operation.parameters.filter((it) => it.in === 'query').map((it) => [it.name, fromSchema(it.schema).map(String)])), { requiredKeys: [] }),
      signer: fc.constantFrom('supervisor' as const, 'supervisor' as const, 'device' as const, 'nobody' as const),
      body: takesBytes ? fc.uint8Array({ maxLength: 200 }).map((it) => Uint8Array.from(it)) : json,
    })
    // One that is all right, so that each route is reached behind its first door whatever chance brings.
    const good = {
      places: Object.fromEntries(operation.parameters.filter((it) => it.in === 'path').map((it) => [it.name, there(it.name)])),
      query: name === 'pull' ? { after: '0', epoch: supervisor.phone.epoch } : {},
      signer: 'supervisor' as const,
      body: goodBodies[name],
    }
    const statuses = new Set<number>()
    await fc.assert(
      fc.asyncProperty(request, async ({ places, query, signer, body }) => {
        const filled = path.replace(/\{(\w+)\}/g, (_, place: string) => (places[place]!.startsWith('%') ? places[place]! : encodeURIComponent(places[place]!)))
        const search = new URLSearchParams(query as Record<string, string>).toString()
        const url = search ? `${filled}?${search}` : filled
        const answer = await ask(method, url, signer, body === undefined ? undefined : body, takesBytes ? { 'Content-Length': String(body?.length ?? 0) } : {})
        statuses.add(answer.status)
        // Where a place has turned the address into another, that one's description is not ours to look at.
        expect(answer.status).not.toBe(500)
        if (Object.values(places).every((it) => it !== '' && !/^(\.|%2e)/i.test(it)))
          await mustBeDescribed(answer, operation, `${method} ${url} by ${signer}`)
      }),
      { numRuns: slow.has(name) ? 10 : 25, examples: [[good]] },
    )
    answered.set(name, statuses)
  })

  it('was reached behind its first door, not only refused at it', () => {
    const reached = [...answered].filter(([, statuses]) => statuses.has(200)).map(([name]) => name)
    expect(reached).toEqual(expect.arrayContaining(['hello', 'me', 'pull', 'live', 'report', 'getBlob', 'codes', 'devices', 'end', 'aside', 'people', 'setPassphrase', 'removePassphrase', 'log']))
  })

  it('takes in whatever a signed entry says, as what it is, and gives it back', async () => {
    const names = Object.keys(kinds) as Kind[]
    const entries = fc.oneof(...names.map((kind) => fc.tuple(fc.constant(kind), fromSchema(z.toJSONSchema(kinds[kind], { unrepresentable: 'any' }) as Json))))
    const { phone } = supervisor
    let valid = 0
    await fc.assert(
      fc.asyncProperty(fc.array(entries, { minLength: 1, maxLength: 5 }), async (list) => {
        const [seq, h] = [phone.seq, phone.h]
        let sealed: Sealed[]
        try {
          sealed = list.map(([kind, data]) => JSON.parse(JSON.stringify(phone.entry(kind, data as Record<string, unknown>))) as Sealed)
        } catch {
          // No phone can write what has no canonical form.
          ;[phone.seq, phone.h] = [seq, h]
          return
        }
        const answer = await phone.push(sealed)
        expect(answer.error).toBeUndefined()
        expect(answer.acks.map(({ id }) => id)).toEqual(sealed.map(({ entry }) => entry.id))
        const pulled = await phone.send('GET', `/api/v1/pull?epoch=${phone.epoch}&after=${answer.acks[0]!.gseq - 1}`)
        const page = (await pulled.json()) as { entries: { h: string; status: string }[] }
        expect(page.entries.map((it) => it.h)).toEqual(sealed.map((it) => it.h))
        const fits = validator(described.paths['/api/v1/pull']!['get']!.responses['200']!.content['application/json']!.schema)
        expect(fits(page), JSON.stringify(fits.errors)).toBe(true)
        valid += page.entries.filter(({ status }) => status === 'valid').length
      }),
      { numRuns: 25 },
    )
    expect(valid).toBeGreaterThan(0)
  })

  it('leaves the server alive and its record whole', async () => {
    expect((await server.ask(new Request('http://localhost/healthz'))).status).toBe(200)
    expect(await server.parts.database.snapshot(verifyRecord)).toMatchObject({ ok: true })
  })
})
