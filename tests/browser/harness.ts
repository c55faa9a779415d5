import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { chromium, type BrowserContext, type Page } from 'playwright-core'
import { freePort, startServer, type RunningServer } from '../server/kill.ts'
import type { Screen } from './engines/screen.ts'
import { phoneSize } from './phone-size.ts'

const flags = [
  '--no-sandbox', '--disable-gpu', '--disable-quic', '--no-first-run', '--disable-background-networking', '--disable-component-update', '--disable-sync',
]
export const executablePath = process.env['CHROMIUM_PATH'] ?? '/usr/bin/chromium'


/** A server program that can really be stopped and started again over the same record. */
export class Laboratory {
  readonly folder = mkdtempSync(join(tmpdir(), 'bathkeeper-lab-'))
  #port = 0
  #server: RunningServer | undefined

  get origin(): string {
    return `http://localhost:${this.#port}`
  }

  /** The code that a new server prints. */
  get code(): string | undefined {
    return this.#server?.code
  }

  /** `aheadMs`: so much later, where a test has let time go by on a phone. */
  async start(aheadMs = 0): Promise<void> {
    if (!existsSync(new URL('../../dist/index.html', import.meta.url))) throw new Error('the app is not built: npm run build')
    this.#port ||= await freePort()
    const preload = new URL('../server/clock-ahead.mjs', import.meta.url).href
    const env = aheadMs ? { CLOCK_AHEAD_MS: String(aheadMs), NODE_OPTIONS: `--import ${preload}` } : {}
    this.#server = await startServer({ folder: this.folder, port: this.#port, env, bundled: true })
  }

  async stop(): Promise<void> {
    await this.#server?.stop()
    this.#server = undefined
  }

  async end(): Promise<void> {
    await this.stop()
    rmSync(this.folder, { recursive: true, force: true })
  }
}

/** A phone: a browser with a profile of its own, which can really be closed and opened again. */
export class Phone {
  readonly profile = mkdtempSync(join(tmpdir(), 'bathkeeper-phone-'))
  /** What must not happen: faults of the page, and what its content policy refused. */
  readonly complaints: string[] = []
  readonly #before: [work: (given: never) => void, given: unknown][] = []
  #context: BrowserContext | undefined
  #page: Page | undefined

  constructor(
    readonly origin: string,
    /** Flags of every browser of this phone, such as those of a fake camera. */
    private readonly more: readonly string[] = [],
  ) {}

  /** The page that was opened last. */
  get page(): Page {
    if (!this.#page) throw new Error('the phone is closed')
    return this.#page
  }

  before<Given>(work: (given: Given) => void, given: Given): void {
    this.#before.push([work, given])
  }

  async fileOf(act: () => Promise<void>): Promise<Buffer> {
    const [download] = await Promise.all([this.page.waitForEvent('download'), act()])
    return readFileSync(await download.path())
  }

  /** `more`: flags of this browser only. */
  async open(path = '/', more: readonly string[] = []): Promise<Page> {
    const context = await chromium.launchPersistentContext(this.profile, {
      executablePath, headless: true, args: [...flags, ...this.more, ...more], viewport: phoneSize, deviceScaleFactor: 2, hasTouch: true, isMobile: true, locale: 'en-GB',
    })
    this.#context = context
    // Two cores may be busy with something else: what is awaited is a condition, and the time is only there so that a hung page ends.
    context.setDefaultTimeout(90_000)
    await context.addInitScript(() => {
      addEventListener('securitypolicyviolation', (event) => console.error(`content policy: ${event.violatedDirective} ${event.blockedURI} ${event.sourceFile}:${event.lineNumber}`))
    })
    for (const [work, given] of this.#before) await context.addInitScript(work as (given: unknown) => void, given)
    const page = context.pages()[0] ?? (await context.newPage())
    this.#page = page
    page.on('pageerror', (error) => this.complaints.push(error.stack ?? error.message))
    page.on('console', (message) => {
      const text = message.text()
      // A request that does not reach a stopped server is the ordinary life of a phone; the browser logs it all the same.
      if (message.type() === 'error' && !/net::ERR_|Failed to load resource/.test(text)) this.complaints.push(text)
    })
    await page.goto(`${this.origin}${path}`)
    return page
  }

  /** As when the battery dies: no leave-taking. */
  async close(): Promise<void> {
    await this.#context?.close()
    this.#context = undefined
    this.#page = undefined
  }

  async end(): Promise<void> {
    await this.close()
    rmSync(this.profile, { recursive: true, force: true })
  }
}

/** Goes to an address as a tap on a link does, without loading the page anew. */
export const goTo = async (page: Screen, path: string): Promise<void> => {
  await page.evaluate((to) => {
    const link = document.createElement('a')
    link.href = to
    document.body.append(link)
    link.click()
    link.remove()
  }, path)
  await page.waitForURL(`**${path}`)
}

export const pathOf = (page: Screen): Promise<string> => page.evaluate(() => location.pathname)

/** So many minutes later, by both clocks of the page, until it is loaded anew. */
export const letTimePass = (page: Screen, minutes: number): Promise<void> =>
  page.evaluate((milliseconds) => {
    for (const clock of [Date, performance]) {
      const now = clock.now.bind(clock)
      clock.now = () => now() + milliseconds
    }
  }, minutes * 60_000)

/** As when somebody sets the phone's clock: the wall's, not the one that only counts on. */
export const setClockOn = (page: Screen, minutes: number): Promise<void> =>
  page.evaluate((milliseconds) => {
    const now = Date.now.bind(Date)
    Date.now = () => now() + milliseconds
  }, minutes * 60_000)

export const press = (page: Screen, name: string | RegExp): Promise<void> => page.getByRole('button', { name }).first().click()

/** Keys a number on the pad. */
export const keyIn = async (page: Screen, digits: string): Promise<void> => {
  const pad = page.getByRole('group')
  for (const key of digits) await pad.getByRole('button', { name: key === '.' ? 'Decimal point' : key === '-' ? 'Change the sign' : key, exact: true }).click()
}

/** Saves what is keyed, and keeps a value that asks for a second look. */
export const save = async (page: Screen): Promise<void> => {
  await press(page, 'Save reading')
  const keep = page.getByRole('button', { name: /^Keep / })
  const saved = page.getByText('Saved on this phone')
  await keep.or(saved).first().waitFor()
  if (await keep.isVisible()) await keep.click()
  await saved.waitFor()
}

/** `check`: where the screen of the reading is not open yet. */
export const saveReading = async (page: Screen, digits: string, check?: string): Promise<void> => {
  if (check) await goTo(page, `/check/${check}`)
  await keyIn(page, digits)
  await save(page)
}

export const unlock = async (page: Screen, person: string, pin = '2468'): Promise<void> => {
  await page.getByRole('button', { name: person }).click()
  await page.getByText(/PIN/).first().waitFor()
  await keyIn(page, pin)
  await press(page, 'Go on')
  await page.getByRole('heading', { name: 'Now', level: 1 }).waitFor()
}

/** From a new server to the demo laboratory on this phone: its first supervisor, its plan, somebody with the phone in hand. `seen`: told of each screen on the way. */
export const found = async (page: Screen, person: string, seen: (screen: string) => Promise<void> = async () => undefined): Promise<void> => {
  await page.getByLabel('Name of this phone').fill('Machine room 1')
  await seen('enrol')
  await page.getByLabel('Your name').fill('Rosa Kern')
  await page.getByLabel('A passphrase of your own').fill('silver nitrate in the dark')
  await press(page, 'Go on')
  await page.getByRole('button', { name: 'The demo laboratory' }).waitFor()
  await seen('begin')
  await press(page, 'The demo laboratory')
  await page.getByRole('heading', { name: 'Who has the phone?' }).waitFor({ timeout: 60_000 })
  await seen('who')
  await unlock(page, person)
}

/** Until the server has everything that this phone holds, by the phone's own store: what the head of the page says comes a moment later. */
export const allSent = async (page: Screen): Promise<void> => {
  const waiting = (): Promise<number> =>
    page.evaluate(
      () =>
        new Promise<number>((resolve, reject) => {
          const asked = indexedDB.open('bathkeeper')
          asked.onerror = () => reject(asked.error ?? new Error('no store'))
          asked.onsuccess = () => {
            const count = asked.result.transaction('outbox').objectStore('outbox').count()
            count.onsuccess = () => {
              asked.result.close()
              resolve(count.result)
            }
          }
        }),
    )
  while ((await waiting()) > 0) await page.waitForTimeout(200)
}

/** Until the service worker can open every part of the app without a network. */
export const readyForNoNetwork = async (page: Screen): Promise<void> => {
  const later = readdirSync(new URL('../../dist/later', import.meta.url)).filter((name) => /\.js$/.test(name)).length
  await page.evaluate(() => navigator.serviceWorker.ready.then(({ active }) => active?.state))
  for (const until = Date.now() + 60_000; (await page.evaluate(async () => (await (await caches.open('later-files')).keys()).length)) < later; await page.waitForTimeout(250))
    if (Date.now() > until) throw new Error('the service worker has not kept every part of the app within a minute')
}

/** A press that is held until the line has filled, however slowly the page draws. */
export const holdLine = async (page: Screen, text: string | RegExp): Promise<void> => {
  const line = page.getByRole('button', { name: text })
  // To the middle: at the edge it may lie under the places at the foot.
  await line.evaluate((it) => it.scrollIntoView({ block: 'center', behavior: 'instant' }))
  const box = (await line.boundingBox())!
  await line.evaluate((it) => {
    let most = 0
    const look = (): void => {
      const held = Number(it.style.getPropertyValue('--held'))
      most = Math.max(most, held)
      const isOver = !it.isConnected || it.getAttribute('aria-pressed') === 'true' || (most > 0.5 && held === 0)
      if (isOver) document.documentElement.dataset['held'] = 'yes'
      else requestAnimationFrame(look)
    }
    delete document.documentElement.dataset['held']
    look()
  })
  await page.mouse.move(box.x + box.width / 2, box.y + box.height / 2)
  await page.mouse.down()
  await page.locator('html[data-held]').waitFor({ state: 'attached' })
  await page.mouse.up()
}
