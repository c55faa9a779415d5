import type { Context } from 'hono'
import * as z from 'zod'
import { deviceId } from '../../record/ids.ts'
import { wireVersion } from '../../wire/messages.ts'
import type { AnswerOf, RequestOf, RouteName, routes } from '../../wire/routes.ts'
import type { DeviceRow } from '../database/tables.ts'
import type { Client } from '../http/address.ts'
import type { Env } from '../http/env.ts'
import type { Passphrases } from '../people/passphrase.ts'
import type { CodeTries } from '../people/code-tries.ts'
import type { Parts } from '../parts.ts'

/**
 * What the server reads more loosely than phones write it: entries are looked at one by one, so that one that does not fit cannot keep out
 * the good ones before it, nor block those after it.
 */
export const loosely = {
  push: z.strictObject({ v: z.literal(wireVersion), dev: deviceId, epoch: z.string().max(64), entries: z.array(z.unknown()).min(1).max(200) }),
  import: z.strictObject({
    format: z.literal('bathkeeper-unsent'), v: z.literal(1), dev: deviceId, epoch: z.string().max(64), name: z.string().max(60), made: z.string().max(64),
    entries: z.array(z.unknown()).min(1).max(20_000), sig: z.string().max(128),
  }),
  importRecord: z.strictObject({ v: z.literal(wireVersion), dev: deviceId, entries: z.array(z.unknown()).min(1).max(200) }),
} as const

type Loosely = typeof loosely
type Table = typeof routes
type QueryOf<N extends RouteName> = Table[N] extends { query: z.core.$ZodType<infer Q> } ? Q : undefined
type ParamsOf<N extends RouteName> = Table[N] extends { params: z.core.$ZodType<infer P> } ? P : undefined
type DeviceOf<N extends RouteName> = Table[N]['who'] extends 'anyone' ? undefined : DeviceRow
type Parsed<N extends RouteName> = N extends keyof Loosely ? z.infer<Loosely[N]> : RequestOf<N>

/** Shared by all routes of one app. */
export interface Services {
  parts: Parts
  passphrases: Passphrases
  codeTries: CodeTries
}

/** All that a route needs, parsed. */
export interface Given<N extends RouteName> extends Services {
  c: Context<Env>
  client: Client
  device: DeviceOf<N>
  /** The supervisor whose presence is proven; empty where the route does not ask for it. */
  supervisor: string
  request: Parsed<N>
  query: QueryOf<N>
  params: ParamsOf<N>
  bytes: Uint8Array
}

export type Handler<N extends RouteName> = (given: Given<N>) => Promise<([AnswerOf<N>] extends [never] ? never : AnswerOf<N>) | Response>
export type Handlers = { [N in RouteName]: Handler<N> }
