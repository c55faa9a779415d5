import { existsSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, statSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { DrivenScreen } from './driven-screen.ts'
import type { Driver } from './driver.ts'

/** What an engine is started with. */
export interface Start {
  profile: string
  /** Where it saves files, without asking. */
  downloads: string
  /** Scripts of every page, run before the page's own. */
  before: readonly string[]
  complain(text: string): void
}

/** A phone with another engine than Chromium's, which can really be closed and opened again. */
export class DrivenPhone {
  readonly profile = mkdtempSync(join(tmpdir(), 'bathkeeper-phone-'))
  readonly complaints: string[] = []
  readonly #downloads = join(this.profile, 'downloads')
  #before: string[] = []
  #driver: Driver | undefined
  #page: DrivenScreen | undefined

  constructor(
    readonly origin: string,
    private readonly start: (phone: Start) => Promise<Driver>,
  ) {
    mkdirSync(this.#downloads)
  }

  get page(): DrivenScreen {
    if (!this.#page) throw new Error('the phone is closed')
    return this.#page
  }

  before<Given>(work: (given: Given) => void, given: Given): void {
    this.#before.push(`(${work.toString()})(${JSON.stringify(given)})`)
  }

  async fileOf(act: () => Promise<void>): Promise<Buffer> {
    const there = new Set(readdirSync(this.#downloads))
    await act()
    // While it is written, an engine keeps another file beside it, or an empty one in its place.
    for (const until = Date.now() + 60_000; Date.now() < until; await new Promise((passed) => setTimeout(passed, 50))) {
      const fresh = readdirSync(this.#downloads).filter((name) => !there.has(name))
      const path = fresh.length === 1 ? join(this.#downloads, fresh[0]!) : undefined
      if (path && existsSync(path) && statSync(path).size > 0) return readFileSync(path)
    }
    throw new Error('no file was saved within a minute')
  }

  async open(path = '/'): Promise<DrivenScreen> {
    // A test that failed may have left it open.
    await this.close()
    this.#driver = await this.start({
      profile: this.profile, downloads: this.#downloads, before: [heard, ...this.#before],
      complain: (text) => {
        if (!isOrdinary(text)) this.complaints.push(text)
      },
    })
    this.#page = new DrivenScreen(this.#driver)
    if (this.origin) await this.#page.goto(`${this.origin}${path}`)
    return this.#page
  }

  async close(): Promise<void> {
    await this.#driver?.kill()
    this.#driver = undefined
    this.#page = undefined
  }

  async end(): Promise<void> {
    await this.close()
    rmSync(this.profile, { recursive: true, force: true })
  }
}

/** What the content policy refuses is heard of as any other fault. */
const heard =
  "addEventListener('securitypolicyviolation', (event) => console.error(`content policy: ${event.violatedDirective} ${event.blockedURI} ${event.sourceFile}:${event.lineNumber}`))"

/** A request that does not reach a stopped server is the ordinary life of a phone; a browser may log it all the same. */
const isOrdinary = (text: string): boolean => /Failed to load resource|Could not connect|NetworkError when attempting|can’t establish a connection/.test(text)
