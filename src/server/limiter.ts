import type { Clock } from './clock.ts'

export interface Allowance {
  /** Requests that may come at once. */
  burst: number
  perSecond: number
}

/** Token buckets by key. They live in this process: several instances allow several times as much, so what must hold exactly is counted in the database. */
export class Limiter {
  readonly #buckets = new Map<string, { tokens: number; at: number }>()
  constructor(
    private readonly allowance: Allowance,
    private readonly clock: Clock,
  ) {}

  /** Takes one token; otherwise says in how many seconds the next one is there. */
  take(key: string): { ok: true } | { ok: false; retryAfter: number } {
    const now = this.clock()
    const { burst, perSecond } = this.allowance
    const bucket = this.#buckets.get(key) ?? { tokens: burst, at: now }
    const tokens = Math.min(burst, bucket.tokens + (Math.max(0, now - bucket.at) / 1000) * perSecond)
    const ok = tokens >= 1
    this.#buckets.delete(key)
    this.#buckets.set(key, { tokens: ok ? tokens - 1 : tokens, at: now })
    this.#forget(now)
    return ok ? { ok } : { ok, retryAfter: Math.max(1, Math.ceil((1 - tokens) / perSecond)) }
  }

  /** Buckets that are full again say nothing; the map keeps the order of last use, so the oldest come first. */
  #forget(now: number): void {
    const refillMs = (this.allowance.burst / this.allowance.perSecond) * 1000
    for (const [key, { at }] of this.#buckets) {
      if (now - at < refillMs && this.#buckets.size < 10_000) break
      this.#buckets.delete(key)
    }
  }
}
