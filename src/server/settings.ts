import { join, resolve } from 'node:path'
import * as z from 'zod'

const port = z.coerce.number().int().min(0).max(65_535)

const environment = z.object({
  PORT: port.default(8080),
  HOST: z.string().optional(),
  BATHKEEPER_DATA: z.string().min(1).default('data'),
  DATABASE_URL: z.string().regex(/^postgres(ql)?:\/\//).optional(),
  TLS_CERT: z.string().min(1).optional(),
  TLS_KEY: z.string().min(1).optional(),
  PUBLIC_URL: z.url({ protocol: /^https?$/ }).optional(),
  TRUSTED_PROXIES: z.string().default(''),
  NEW_SERVER_KEY: z.enum(['yes', 'no']).default('no'),
  METRICS_TOKEN: z.string().min(16).optional(),
  LOG_LEVEL: z.enum(['fatal', 'error', 'warn', 'info', 'debug', 'trace', 'silent']).default('warn'),
})

export interface Settings {
  port: number
  host: string | undefined
  folder: string
  databaseUrl: string | undefined
  tls: { cert: string; key: string } | undefined
  /** How phones reach this server where a proxy stands before it. */
  publicOrigin: string | undefined
  trustedProxies: string[]
  /** The server's key is lost for good: the record goes on under another one. */
  mayHaveNewKey: boolean
  metricsToken: string | undefined
  logLevel: string
}

/** A setting that cannot be used, by its name in the environment. */
export class BadSetting extends Error {
  constructor(
    readonly setting: string,
    readonly why: string,
  ) {
    super(`${setting}: ${why}`)
    this.name = 'BadSetting'
  }
}

export const readSettings = (env: Readonly<Record<string, string | undefined>>): Settings => {
  const given = environment.safeParse(Object.fromEntries(Object.entries(env).filter(([, value]) => value !== '')))
  if (!given.success) {
    const [issue] = given.error.issues
    throw new BadSetting(String(issue?.path[0]), issue?.message ?? '')
  }
  const it = given.data
  if ((it.TLS_CERT === undefined) !== (it.TLS_KEY === undefined)) throw new BadSetting(it.TLS_CERT === undefined ? 'TLS_CERT' : 'TLS_KEY', 'certificate and key come together')
  return {
    port: it.PORT,
    host: it.HOST,
    folder: resolve(it.BATHKEEPER_DATA),
    databaseUrl: it.DATABASE_URL,
    tls: it.TLS_CERT !== undefined && it.TLS_KEY !== undefined ? { cert: it.TLS_CERT, key: it.TLS_KEY } : undefined,
    publicOrigin: it.PUBLIC_URL === undefined ? undefined : new URL(it.PUBLIC_URL).origin,
    trustedProxies: it.TRUSTED_PROXIES.split(/[\s,]+/).filter(Boolean),
    mayHaveNewKey: it.NEW_SERVER_KEY === 'yes',
    metricsToken: it.METRICS_TOKEN,
    logLevel: it.LOG_LEVEL,
  }
}

export const databaseFile = (folder: string): string => join(folder, 'bathkeeper.db')
export const keyFile = (folder: string): string => join(folder, 'server-key.pem')
