import { writeFileSync } from 'node:fs'
import { build, type Rollup } from 'vite'
import type { Driver } from './driver.ts'
import type { PageFinder } from './finder.ts'
import type { Box, Finder, Part, Role, Screen, State } from './screen.ts'
import { inWords, wordsOf, type Step } from './steps.ts'

declare const finder: PageFinder

/** Two cores may be busy with something else: what is awaited is a condition, and the time is only there so that a hung page ends. */
const patience = 90_000
const pollMilliseconds = 40

const pause = (milliseconds: number): Promise<void> => new Promise((resolve) => setTimeout(resolve, milliseconds))

let finderScript: Promise<string> | undefined
const builtFinder = async (): Promise<string> => {
  const built = (await build({
    configFile: false,
    logLevel: 'silent',
    build: { write: false, minify: true, target: 'es2022', rollupOptions: { input: new URL('finder.ts', import.meta.url).pathname } },
  })) as Rollup.RollupOutput
  return built.output[0].code
}

type Work = (...given: never[]) => unknown

/** Runs a function in the page, which finds the finder there. A page that has just been loaded is given it first. */
const runWithFinder = async (driver: Driver, work: string, given: readonly unknown[]): Promise<unknown> => {
  const source = `async (...given) => globalThis.finder ? { done: await (${work})(...given) } : 'no finder'`
  for (;;) {
    const answer = (await driver.run(source, given)) as { done: unknown } | 'no finder'
    if (answer !== 'no finder') return answer.done
    await driver.run(`() => { ${await (finderScript ??= builtFinder())} }`, [])
  }
}

class DrivenFinder implements Finder {
  constructor(
    protected readonly driver: Driver,
    protected readonly steps: readonly Step[],
  ) {}

  protected part(step: Step): Part {
    return new DrivenPart(this.driver, [...this.steps, step])
  }
  getByRole(role: Role, { name, exact, level }: { name?: string | RegExp; exact?: boolean; level?: number } = {}): Part {
    return this.part({ by: 'role', role, name: name === undefined ? undefined : wordsOf(name, exact), level })
  }
  getByText(text: string | RegExp, { exact }: { exact?: boolean } = {}): Part {
    return this.part({ by: 'text', text: wordsOf(text, exact) })
  }
  getByLabel(text: string | RegExp, { exact }: { exact?: boolean } = {}): Part {
    return this.part({ by: 'label', text: wordsOf(text, exact) })
  }
  locator(css: string, { hasText, has }: { hasText?: string | RegExp; has?: Part } = {}): Part {
    return this.part({ by: 'css', css, holding: hasText === undefined ? undefined : wordsOf(hasText), has: (has as DrivenPart | undefined)?.steps })
  }
}

class DrivenPart extends DrivenFinder implements Part {
  first(): Part {
    return this.nth(0)
  }
  last(): Part {
    return this.nth(-1)
  }
  nth(index: number): Part {
    return this.part({ by: 'place', index })
  }
  or(other: Part): Part {
    return this.part({ by: 'or', steps: (other as DrivenPart).steps })
  }

  #run(work: Work, ...given: unknown[]): Promise<unknown> {
    return runWithFinder(this.driver, work.toString(), [this.steps, ...given])
  }

  /** Asks again until the answer is no reason for waiting. */
  async #until<T>(ask: () => Promise<{ is: T } | { wait: string }>, timeout = patience): Promise<T> {
    for (const until = Date.now() + timeout; ; await pause(pollMilliseconds)) {
      const answer = await ask().catch((thrown: unknown) => {
        // The page was left while it was asked; the next one answers.
        if (Date.now() < until && isLeaving(thrown)) return { wait: String(thrown) }
        throw new Error(`${inWords(this.steps)}: ${String(thrown)}`)
      })
      if ('is' in answer) return answer.is
      if (Date.now() > until) throw new Error(`${inWords(this.steps)}: ${answer.wait} after ${timeout / 1000} s`)
    }
  }

  async #target(timeout?: number): Promise<{ x: number; y: number }> {
    return this.#until(async () => {
      const found = (await this.#run(async (steps: Step[]) => {
        const element = finder.one(steps)
        return element ? finder.target(element) : 'not there'
      })) as { x: number; y: number } | string
      return typeof found === 'string' ? { wait: found } : { is: found }
    }, timeout)
  }

  async click({ timeout }: { timeout?: number } = {}): Promise<void> {
    const { x, y } = await this.#target(timeout)
    await this.driver.move(x, y)
    await this.driver.down()
    await this.driver.up()
  }

  async check(): Promise<void> {
    const isChecked = async (): Promise<boolean> => this.evaluate((it) => (it as HTMLInputElement).checked)
    if (await isChecked()) return
    await this.click()
    await this.#until(async () => ((await isChecked()) ? { is: true } : { wait: 'not checked' }))
  }

  async fill(text: string): Promise<void> {
    await this.#target()
    const lines = text.replaceAll('\r\n', '\n')
    // As a whole, tabs and lines with it, which as keys would go on to the next field.
    await this.#onElement(
      ((it: HTMLInputElement, value: string) => {
        it.focus()
        it.select()
        document.execCommand(value ? 'insertText' : 'delete', false, value)
      }).toString(),
      lines,
    )
    await this.#until(async () => {
      const value = await this.evaluate((it) => (it as HTMLInputElement).value)
      return value === lines ? { is: value } : { wait: `holds “${value}”, not “${lines}”` }
    })
  }

  async setInputFiles(path: string): Promise<void> {
    await this.waitFor({ state: 'attached' })
    await this.driver.choose(this.steps, path)
  }

  innerText(): Promise<string> {
    return this.evaluate((it) => it.innerText)
  }
  async allInnerTexts(): Promise<string[]> {
    return (await this.#run((steps: Step[]) => finder.all(steps).map((it) => it.innerText))) as string[]
  }
  async getAttribute(name: string): Promise<string | null> {
    return (await this.#onElement(`(it, name) => it.getAttribute(name)`, name)) as string | null
  }
  boundingBox(): Promise<Box | null> {
    return this.evaluate((it) => {
      const { x, y, width, height } = it.getBoundingClientRect()
      return { x, y, width, height }
    })
  }
  async isVisible(): Promise<boolean> {
    return (await this.#run((steps: Step[]) => {
      const element = finder.one(steps)
      return element !== null && finder.isVisible(element)
    })) as boolean
  }
  async count(): Promise<number> {
    return (await this.#run((steps: Step[]) => finder.all(steps).length)) as number
  }

  async waitFor({ state = 'visible', timeout }: { state?: State; timeout?: number } = {}): Promise<void> {
    await this.#until(async () => {
      const is = (await this.#run((steps: Step[]) => {
        const element = finder.one(steps)
        return element ? (finder.isVisible(element) ? 'visible' : 'hidden') : 'detached'
      })) as State
      const isSo = is === state || (state === 'attached' && is !== 'detached') || (state === 'hidden' && is === 'detached')
      return isSo ? { is } : { wait: `${is}, not ${state},` }
    }, timeout)
  }

  evaluate<Result>(work: (element: HTMLElement) => Result | Promise<Result>): Promise<Result> {
    return this.#onElement(work.toString()) as Promise<Result>
  }

  /** Waits until it is there; what is done is done once. */
  async #onElement(source: string, ...given: unknown[]): Promise<unknown> {
    const onOne = `async (steps, ...given) => { const element = finder.one(steps); return element ? { is: await (${source})(element, ...given) } : { wait: 'not there' } }`
    return this.#until(async () => (await runWithFinder(this.driver, onOne, [this.steps, ...given])) as { is: unknown } | { wait: string })
  }
}

/** The clients' own words for a page that went away under a question. */
const isLeaving = (thrown: unknown): boolean => /context was destroyed|no such frame|AbortError|Realm|navigat|unloaded|Cannot find context|javascript error: $/i.test(String(thrown))

export class DrivenScreen extends DrivenFinder implements Screen {
  constructor(driver: Driver) {
    super(driver, [])
  }
  evaluate<Result>(work: () => Result | Promise<Result>): Promise<Result>
  evaluate<Result, Given>(work: (given: Given) => Result | Promise<Result>, given: Given): Promise<Result>
  async evaluate(work: Work, ...given: unknown[]): Promise<unknown> {
    return this.driver.run(`async (...given) => (${work.toString()})(...given)`, given)
  }
  async goto(address: string): Promise<void> {
    await this.driver.goTo(address)
  }
  async reload(): Promise<void> {
    await this.driver.reload()
  }
  async waitForURL(pattern: string): Promise<void> {
    const wanted = new RegExp(`^${pattern.split('**').map((part) => part.replace(/[.*+?^${}()|[\]\\]/g, '\\$&')).join('.*')}$`)
    let at = ''
    for (const until = Date.now() + patience; Date.now() < until; await pause(pollMilliseconds)) {
      at = await this.evaluate(() => location.href)
      if (wanted.test(at)) return
    }
    throw new Error(`the page stands at ${at}, not at ${pattern}`)
  }
  async setViewportSize(size: { width: number; height: number }): Promise<void> {
    await this.driver.resize(size)
  }
  async waitForTimeout(milliseconds: number): Promise<void> {
    await pause(milliseconds)
  }
  async screenshot({ path }: { path?: string } = {}): Promise<Buffer> {
    const picture = await this.driver.screenshot()
    if (path) writeFileSync(path, picture)
    return picture
  }
  get keyboard(): Screen['keyboard'] {
    return { type: (text) => this.driver.type(text), press: (key) => this.driver.press(key) }
  }
  get touchscreen(): Screen['touchscreen'] {
    return { tap: (x, y) => this.driver.tap(x, y) }
  }
  get mouse(): Screen['mouse'] {
    return { move: (x, y) => this.driver.move(x, y), down: () => this.driver.down(), up: () => this.driver.up() }
  }
}
