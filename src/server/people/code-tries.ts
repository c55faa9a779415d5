import type { Clock } from '../clock.ts'
import { Limiter } from '../limiter.ts'
import type { Limits } from '../parts.ts'
import { Refused } from '../http/refused.ts'

/**
 * Wrong one-time codes. Whoever guesses does not say which code is meant, so tries are counted by address, and over all addresses until the
 * open codes are taken back: 25 guesses at 50 bits in ten minutes.
 */
export class CodeTries {
  readonly #byAddress: Limiter
  #wrong = 0
  constructor(
    private readonly limits: Limits,
    clock: Clock,
  ) {
    this.#byAddress = new Limiter(limits.codeTries, clock)
  }

  /** Takes one try of an address; given back by nobody, since a phone needs one for one code. */
  take(address: string): void {
    const taken = this.#byAddress.take(address)
    if (!taken.ok) throw new Refused('tooMany', { retryAfter: taken.retryAfter })
  }

  /** True when the open codes are to be taken back. */
  wrong(): boolean {
    this.#wrong += 1
    if (this.#wrong < this.limits.codeTriesBeforeVoid) return false
    this.#wrong = 0
    return true
  }
}
