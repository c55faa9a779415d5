import { existsSync } from 'node:fs'
import { join } from 'node:path'
import { launch, type ElementHandle } from 'puppeteer-core'
import { phoneSize } from '../phone-size.ts'
import type { Start } from './driven-phone.ts'
import type { Driver } from './driver.ts'
import type { Step } from './steps.ts'

/** Speaks WebDriver BiDi by itself. The profile is a folder like any other and outlives the program. */
export const openFirefox = async ({ profile, downloads, before, complain }: Start): Promise<Driver> => {
  const browser = await launch({
    browser: 'firefox', executablePath: process.env['FIREFOX_PATH'] ?? '/usr/bin/firefox-esr', userDataDir: profile, headless: true, defaultViewport: null,
    // A picture that the browser makes up stands in for the camera.
    extraPrefsFirefox: {
      'media.navigator.streams.fake': true, 'media.navigator.permission.disabled': true, 'intl.accept_languages': 'en-GB',
      // As on a phone: bars that take no room, and a finger for a pointer.
      'ui.useOverlayScrollbars': 1, 'widget.gtk.overlay-scrollbars.enabled': true, 'ui.primaryPointerCapabilities': 1, 'ui.allPointerCapabilities': 1,
      'browser.download.folderList': 2, 'browser.download.dir': downloads, 'browser.download.alwaysOpenPanel': false,
    },
  })
  const page = (await browser.pages())[0] ?? (await browser.newPage())
  await page.setViewport({ ...phoneSize, deviceScaleFactor: 2 })
  for (const script of before) await page.evaluateOnNewDocument(script)
  page.on('pageerror', (error) => complain(error instanceof Error ? (error.stack ?? error.message) : String(error)))
  page.on('console', (message) => {
    if (message.type() !== 'error') return
    // Of an error, the client's own text says only that it is one.
    const said = message.args().map((it) => it.evaluate((thrown: unknown) => (thrown instanceof Error ? `${thrown.message} ${thrown.stack ?? ""}` : String(thrown))))
    void Promise.all(said).then((texts) => complain(texts.join(' ') || message.text()), () => complain(message.text()))
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
    tap: (x, y) => page.touchscreen.tap(x, y),
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
      // The client puts the profile's own settings back in the place of its own when it hears of the end, and starts no other before.
      for (const until = Date.now() + 10_000; ['prefs.js', 'user.js'].some((it) => existsSync(join(profile, `${it}.puppeteer`))); await new Promise((passed) => setTimeout(passed, 20)))
        if (Date.now() > until) throw new Error('the profile is not put in order')
    },
  }
}
