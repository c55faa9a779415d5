import * as z from 'zod'
import { blobTypes } from '../wire/blobs.ts'
import { refusal } from '../wire/messages.ts'
import { routes, type Route } from '../wire/routes.ts'
import { statusOf, type RefusalCode } from './http/refused.ts'

type Json = Record<string, unknown>

const schemaOf = (schema: z.core.$ZodType, io: 'input' | 'output' = 'output'): Json => {
  const made: Json = { ...z.toJSONSchema(schema, { io, target: 'draft-2020-12', unrepresentable: 'any' }) }
  delete made['$schema']
  return made
}

/** Refusals that every route may give. */
const always: readonly RefusalCode[] = ['badRequest', 'crossSite', 'tooMany', 'tooLarge', 'encoded', 'fault', 'busy', 'full']
const ofDevices: readonly RefusalCode[] = ['nonce', 'unauthorised', 'notConfirmed', 'revoked', 'retired', 'quarantined']

const refusalsOf = (route: Route): Json => {
  const codes = new Set<RefusalCode>([
    ...always, ...route.refuses, ...(route.who === 'anyone' ? [] : ofDevices), ...(route.who === 'supervisor' ? (['presence', 'forbidden'] as const) : []),
    ...(route.request && route.request !== 'bytes' ? (['mediaType', 'unknownVersion'] as const) : []),
  ])
  const byStatus = new Map<number, RefusalCode[]>()
  for (const code of codes) byStatus.set(statusOf[code], [...(byStatus.get(statusOf[code]) ?? []), code])
  const content = { 'application/json': { schema: { $ref: '#/components/schemas/Refusal' } } }
  return Object.fromEntries([...byStatus].sort(([a], [b]) => a - b).map(([status, list]) => [String(status), { description: list.join(', '), content }]))
}

const parametersOf = (schema: z.core.$ZodType | undefined, place: 'path' | 'query'): Json[] => {
  if (!schema) return []
  const { properties = {}, required = [] } = schemaOf(schema) as { properties?: Record<string, Json>; required?: string[] }
  return Object.entries(properties).map(([name, inner]) => ({ name, in: place, required: place === 'path' || required.includes(name), schema: inner }))
}

const bytes = { type: 'string', format: 'binary' }
const blobContent = Object.fromEntries(blobTypes.map((type) => [type, { schema: bytes }]))

const contentOf = (what: Route['answer'] | NonNullable<Route['request']>, io: 'input' | 'output'): Json => {
  if (what === 'bytes') return blobContent
  if (what === 'events') return { 'text/event-stream': { schema: { type: 'string' } } }
  return { 'application/json': { schema: schemaOf(what, io) } }
}

const securityOf = ({ who }: Route): Json[] => (who === 'anyone' ? [] : who === 'supervisor' ? [{ Device: [], Presence: [] }] : [{ Device: [] }])

const operationOf = (name: string, route: Route): Json => ({
  operationId: name,
  summary: route.says,
  'x-who': route.who,
  security: securityOf(route),
  parameters: [...parametersOf(route.params, 'path'), ...parametersOf(route.query, 'query')],
  ...(route.request === undefined ? {} : { requestBody: { required: true, content: contentOf(route.request, 'input') } }),
  responses: { '200': { description: 'Done', content: contentOf(route.answer, 'output') }, ...refusalsOf(route) },
})

/** The API as OpenAPI 3.1, made from the same table and schemas that serve it. */
export const openApi = (version: string): Json => {
  const paths: Record<string, Json> = {}
  for (const [name, route] of Object.entries<Route>(routes)) {
    paths[route.path] = { ...paths[route.path], [route.method.toLowerCase()]: operationOf(name, route) }
  }
  return {
    openapi: '3.1.0',
    info: { title: 'Bathkeeper', version, summary: 'Process control of a motion-picture film laboratory', license: { name: 'MIT', identifier: 'MIT' } },
    servers: [{ url: '/' }],
    paths,
    components: {
      schemas: { Refusal: schemaOf(refusal) },
      securitySchemes: {
        Device: {
          type: 'apiKey', in: 'header', name: 'Authorization',
          description: 'Device dev:nonce:sig, an ECDSA P-256 signature by the device over r1|METHOD|path with query|SHA-256 of the body|nonce',
        },
        Presence: { type: 'apiKey', in: 'header', name: 'Presence', description: 'Proof, given by /api/v1/presence, that a supervisor keyed the passphrase on this device' },
      },
    },
  }
}
