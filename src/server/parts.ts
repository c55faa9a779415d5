import type { Logger } from 'pino'
import type { Clock } from './clock.ts'
import type { Database } from './database/database.ts'
import type { StaticFiles } from './http/static-files.ts'
import type { ServerKey } from './keys.ts'
import type { Metrics } from './metrics.ts'
import type { Allowance } from './limiter.ts'

export interface Limits {
  /** Of one device, over all its requests. */
  device: Allowance
  /** Of one address: requests without a known device, and refused ones. */
  stranger: Allowance
  /** Wrong one-time codes of one address. */
  codeTries: Allowance
  /** Wrong one-time codes from anywhere, after which all open codes are void. */
  codeTriesBeforeVoid: number
  /** Passphrases that are being worked out at the same time: each takes 32 MiB and a tenth of a second. */
  passphrasesAtOnce: number
  /** Bytes of entries and photos that one device may bring in a day. */
  dailyBytes: number
  liveConnectionsPerDevice: number
  /** A body of which nothing has come for so long, or that is not whole after so long, is given up. */
  bodySilenceMs: number
  bodyMs: number
}

export const usualLimits: Limits = {
  device: { burst: 200, perSecond: 30 },
  stranger: { burst: 120, perSecond: 2 },
  codeTries: { burst: 5, perSecond: 5 / 600 },
  codeTriesBeforeVoid: 25,
  passphrasesAtOnce: 4,
  dailyBytes: 128 << 20,
  liveConnectionsPerDevice: 4,
  bodySilenceMs: 15_000,
  // A phone itself gives a photo or a file two minutes.
  bodyMs: 150_000,
}

/** What the app is built from. Nothing in it looks at a clock, a file or the environment by itself. */
export interface Parts {
  database: Database
  key: ServerKey
  clock: Clock
  random: (bytes: number) => Uint8Array
  log: Logger
  metrics: Metrics
  limits: Limits
  /** Addresses and networks (`10.0.0.0/8`) whose X-Forwarded-* headers are believed. */
  trustedProxies: readonly string[]
  /** This process itself speaks TLS. */
  isHttps: boolean
  version: string
  /** The built front end; undefined where it has not been built. */
  files: () => StaticFiles | undefined
  /** PEM of the laboratory's own authority, where it has one. */
  authorityCertificate: () => string | undefined
  /** Who may read /metrics besides this machine itself: the bearer of this. */
  metricsToken: string | undefined
  /** Aborted when the server stops, so that live connections end. */
  stopping: AbortSignal
}
