import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { DrivenScreen } from './driven-screen.ts'
import type { Driver } from './driver.ts'

/** A phone with another engine than Chromium's, which can really be closed and opened again. */
export class DrivenPhone {
  readonly profile = mkdtempSync(join(tmpdir(), 'bathkeeper-phone-'))
  readonly complaints: string[] = []
  #driver: Driver | undefined
  #page: DrivenScreen | undefined

  constructor(
    readonly origin: string,
    private readonly start: (profile: string, complain: (text: string) => void) => Promise<Driver>,
  ) {}

  get page(): DrivenScreen {
    if (!this.#page) throw new Error('the phone is closed')
    return this.#page
  }

  async open(path = '/'): Promise<DrivenScreen> {
    // A test that failed may have left it open.
    await this.close()
    this.#driver = await this.start(this.profile, (text) => {
      if (!isOrdinary(text)) this.complaints.push(text)
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

/** A request that does not reach a stopped server is the ordinary life of a phone; a browser may log it all the same. */
const isOrdinary = (text: string): boolean => /Failed to load resource|Could not connect|NetworkError when attempting|can’t establish a connection/.test(text)
