import type { Random } from './seed.ts'

type Fetch = (path: string, init: RequestInit) => Promise<Response>

/** What can befall one request. Everything that a phone sees of it, it sees as a browser would show it. */
export const fates = ['arrives', 'requestLost', 'answerLost', 'answerCut', 'sentTwice', 'serverBusy', 'portal'] as const
export type Fate = (typeof fates)[number]

interface Held {
  phone: string
  release(fate: Fate): Promise<void>
  drop(): void
}

const lost = (): TypeError => new TypeError('Failed to fetch')

/**
 * A network that holds every request until the simulation lets it go on: in any order, so that one overtakes another and waits as long as it
 * likes, and with whatever fate.
 */
export class Network {
  readonly #held: Held[] = []
  readonly counts: Record<Fate, number> = { arrives: 0, requestLost: 0, answerLost: 0, answerCut: 0, sentTwice: 0, serverBusy: 0, portal: 0 }

  /** Every request is answered at once. */
  isGood = false

  constructor(readonly server: Fetch) {}

  get waiting(): number {
    return this.#held.length
  }

  fetchOf(phone: string): Fetch {
    return (path, init) =>
      this.isGood ? this.server(path, { ...init, signal: null }) : new Promise<Response>((resolve, reject) => {
        this.#held.push({
          phone,
          release: (fate) => this.#send(path, init, fate).then(resolve, reject),
          drop: () => reject(lost()),
        })
      })
  }

  /** Lets one of the held requests go on; resolves when its phone has been answered. */
  async releaseOne(random: Random, fate: Fate): Promise<void> {
    const [held] = this.#held.splice(random.below(this.#held.length), 1)
    await held?.release(fate)
  }

  /** The phone is switched off, or the server stops: whatever was on its way gets no answer. */
  drop(phone?: string): void {
    const gone = this.#held.filter((held) => phone === undefined || held.phone === phone)
    for (const held of gone) {
      this.#held.splice(this.#held.indexOf(held), 1)
      held.drop()
    }
  }

  async #send(path: string, init: RequestInit, fate: Fate): Promise<Response> {
    this.counts[fate]++
    const again = (): RequestInit => ({ ...init, signal: null })
    switch (fate) {
      case 'requestLost':
        throw lost()
      case 'answerLost':
        await this.server(path, again())
        throw lost()
      case 'sentTwice': {
        // A proxy that repeats a request: the phone hears the second answer, which refuses the nonce that the first has used up.
        await this.server(path, again())
        return this.server(path, again())
      }
      case 'answerCut': {
        const answer = await this.server(path, again())
        const text = await answer.text()
        return new Response(text.slice(0, Math.floor(text.length * 0.6)), { status: answer.status, headers: answer.headers })
      }
      case 'serverBusy':
        return Response.json({ error: 'busy', retryAfter: 1 }, { status: 503 })
      case 'portal':
        return new Response('<html>Welcome. Please accept the terms.</html>', { headers: { 'Content-Type': 'text/html' } })
      case 'arrives':
        return this.server(path, again())
    }
  }
}
