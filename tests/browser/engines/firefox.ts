import { launch, type ElementHandle } from 'puppeteer-core'
import { phoneSize } from '../phone-size.ts'
import type { Driver } from './driver.ts'
import type { Step } from './steps.ts'

/** Speaks WebDriver BiDi by itself. The profile is a folder like any other and outlives the program. */
export const openFirefox = async (profile: string, complain: (text: string) => void): Promise<Driver> => {
  const browser = await launch({
    browser: 'firefox', executablePath: process.env['FIREFOX_PATH'] ?? '/usr/bin/firefox-esr', userDataDir: profile, headless: true, defaultViewport: null,
    // A picture that the browser makes up stands in for the camera.
    extraPrefsFirefox: { 'media.navigator.streams.fake': true, 'media.navigator.permission.disabled': true, 'intl.accept_languages': 'en-GB' },
  })
  const page = (await browser.pages())[0] ?? (await browser.newPage())
  await page.setViewport({ ...phoneSize, deviceScaleFactor: 2 })
  await page.evaluateOnNewDocument(() => {
    addEventListener('securitypolicyviolation', (event) => console.error(`content policy: ${event.violatedDirective} ${event.blockedURI} ${event.sourceFile}:${event.lineNumber}`))
  })
  page.on('pageerror', (error) => complain(error instanceof Error ? (error.stack ?? error.message) : String(error)))
  page.on('console', (message) => {
    if (message.type() === 'error') complain(message.text())
  })
  return {
    goTo: async (address) => void (await page.goto(address)),
    reload: async () => void (await page.reload()),
    run: (source, given) => page.evaluate(`(${source})(...${JSON.stringify(given)})`),
    type: (text) => page.keyboard.type(text),
    press: (key) => page.keyboard.press(key as 'Enter'),
    move: (x, y) => page.mouse.move(x, y),
    down: () => page.mouse.down(),
    up: () => page.mouse.up(),
    choose: async (steps: readonly Step[], path) => {
      const input = await page.evaluateHandle(`finder.one(${JSON.stringify(steps)})`)
      await (input as ElementHandle<HTMLInputElement>).uploadFile(path)
    },
    resize: ({ width, height }) => page.setViewport({ width, height, deviceScaleFactor: 2 }),
    screenshot: async () => Buffer.from(await page.screenshot()),
    kill: async () => {
      const program = browser.process()!
      const ended = new Promise((resolve) => program.once('exit', resolve))
      process.kill(-program.pid!, 'SIGKILL')
      await ended
    },
  }
}
