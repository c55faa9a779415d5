/**
 * Every screen and state, in both themes and at every size, as pictures, contact sheets and one page that holds them all:
 * `npm run shots -- --out /tmp/shots --only '^trend' --sizes 360x740 --browser firefox` (chromium, firefox or webkit)
 * The screens are those of the app over a founded demo laboratory; states that take a story are told on the stage (`scenes.ts`).
 */
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { parseArgs } from 'node:util'
import { chromium } from 'playwright-core'
import 'temporal-polyfill/global'
import { phoneOf } from '../browser/engines/phone-of.ts'
import type { Screen } from '../browser/engines/screen.ts'
import { executablePath, found, goTo, keyIn, Laboratory, press } from '../browser/harness.ts'
import { screens } from '../browser/screens.ts'
import { scenes } from './scenes.ts'
import { serveStage } from './serve-stage.ts'
import { writeSheets, type Shot } from './sheets.ts'

const { values: given } = parseArgs({
  options: {
    out: { type: 'string', default: 'node_modules/.cache/shots/sheets' },
    only: { type: 'string', default: '' },
    of: { type: 'string', default: 'app,stage' },
    sizes: { type: 'string', default: '360x740,390x844,768x1024,1366x768' },
    themes: { type: 'string', default: 'paper,safelight' },
    language: { type: 'string', default: 'en' },
    zoom: { type: 'string', default: '1' },
    browser: { type: 'string', default: 'chromium' },
  },
})
const only = new RegExp(given.only)
const sizes = given.sizes.split(',').map((text) => text.split('x').map(Number) as [number, number])
const themes = given.themes.split(',')

mkdirSync(given.out, { recursive: true })
const complaints: string[] = []

interface Window {
  page: Screen
  close(): Promise<void>
}

/** Of one dot to a pixel and without a bar at the side, as far as the engine lets itself be told. */
const openChromium = async (): Promise<Window> => {
  const profile = mkdtempSync(join(tmpdir(), 'bathkeeper-shots-'))
  const context = await chromium.launchPersistentContext(profile, {
    executablePath, headless: true, viewport: { width: 360, height: 740 }, deviceScaleFactor: 1, hasTouch: true, isMobile: true, locale: given.language === 'es' ? 'es-ES' : 'en-GB',
    args: ['--no-sandbox', '--disable-gpu', '--disable-quic', '--no-first-run', '--disable-background-networking', '--disable-component-update', '--disable-sync', '--hide-scrollbars'],
  })
  context.setDefaultTimeout(30_000)
  const page = await context.newPage()
  page.on('pageerror', (error) => complaints.push(error.stack ?? error.message))
  return {
    page,
    close: async () => {
      await context.close()
      rmSync(profile, { recursive: true, force: true })
    },
  }
}
const openOther = async (): Promise<Window> => {
  const phone = phoneOf('', given.browser)
  return {
    page: await phone.open(),
    close: async () => {
      complaints.push(...phone.complaints)
      await phone.end()
    },
  }
}
const { page, close } = await (given.browser === 'chromium' ? openChromium() : openOther())

/** By size, then by screen: one shot a theme. */
const taken = new Map<string, Map<string, Shot[]>>()

const drawn = (page: Screen): Promise<unknown> => page.evaluate(() => document.fonts.ready.then(() => new Promise((passed) => requestAnimationFrame(() => requestAnimationFrame(() => passed(0))))))

/** A window takes its time to be as wide as it was told; a phone's is wider where its page is. */
const sizeTo = async (page: Screen, width: number, height: number): Promise<void> => {
  await page.setViewportSize({ width, height })
  for (let looks = 0; looks < 30 && (await page.evaluate(() => innerWidth)) !== width; looks++) await page.waitForTimeout(100)
}

const shoot = async (page: Screen, name: string): Promise<void> => {
  if (!only.test(name)) return
  const file = name.replaceAll(/[^\w.-]+/g, '_')
  for (const [width, height] of sizes) {
    await sizeTo(page, width, height)
    for (const theme of themes) {
      await page.evaluate(([of, zoom]) => {
        document.documentElement.dataset['theme'] = of
        document.documentElement.style.fontSize = `${Number(zoom) * 100}%`
      }, [theme, given.zoom] as const)
      await drawn(page)
      const wide = (await page.evaluate(() => document.documentElement.scrollWidth)) - width
      if (wide > 0) complaints.push(`${name} ${width}x${height}: ${wide} px too wide`)
      const size = `${width}x${height}`
      const path = `${file}-${size}-${theme}.png`
      await page.screenshot({ path: join(given.out, path) })
      const ofSize = taken.get(size) ?? taken.set(size, new Map()).get(size)!
      const shots = ofSize.get(name) ?? ofSize.set(name, []).get(name)!
      shots.push({ name: `${name} · ${theme}`, file: path, width, height })
    }
  }
  // The whole of a screen that goes on below the foot, once: on a phone that is as tall.
  const [width, height] = sizes[0]!
  await sizeTo(page, width, height)
  const tall = await page.evaluate(() => document.documentElement.scrollHeight)
  if (tall <= height + 40) return
  const ofWhole = taken.get('whole') ?? taken.set('whole', new Map()).get('whole')!
  const shots: Shot[] = []
  await sizeTo(page, width, Math.min(tall, 2400))
  for (const theme of themes) {
    await page.evaluate((of) => { document.documentElement.dataset['theme'] = of }, theme)
    await drawn(page)
    const path = `${file}-whole-${theme}.png`
    await page.screenshot({ path: join(given.out, path) })
    shots.push({ name: `${name} · ${theme}`, file: path, width, height: Math.min(tall, 2400) })
  }
  ofWhole.set(name, shots)
}

/** When nothing more has been fetched for a while. */
const still = (page: Screen): Promise<void> =>
  page.evaluate(async () => {
    for (let before = -1, now = 0; now !== before; before = now, now = performance.getEntriesByType('resource').length) await new Promise((passed) => setTimeout(passed, 250))
  })

const readOut = async (page: Screen, isRepeat: boolean): Promise<void> => {
  await goTo(page, '/now')
  await goTo(page, '/check/neg-1-fix-ph')
  await keyIn(page, '4.92')
  await press(page, /Save reading/)
  const keep = page.getByRole('button', { name: /^Keep / })
  await keep.or(page.getByText('Saved on this phone')).first().waitFor()
  if (await keep.isVisible()) {
    await shoot(page, `check, second look${isRepeat ? ' of the repeat' : ''}`)
    await keep.click()
  }
  await page.getByText('Saved on this phone').waitFor()
}

const ofApp = async (): Promise<void> => {
  const lab = new Laboratory()
  await lab.start()
  try {
    await page.goto(`${lab.origin}/#enrol=${lab.code}`)
    await page.evaluate(() => localStorage.setItem('language', 'en'))
    await page.reload()
    await page.getByLabel('Name of this phone').waitFor()
    await found(page, 'Rosa Kern', (screen) => shoot(page, screen))
    await readOut(page, false)
    await shoot(page, 'check, out of limits')
    await readOut(page, true)
    await shoot(page, 'check, confirmed')
    await goTo(page, '/shift')
    const exception = await page.locator('a[href^="/exception/"]').last().getAttribute('href')
    if (given.language !== 'en') {
      await goTo(page, '/menu')
      await page.getByRole('radio', { name: 'Español' }).check()
    }
    for (const path of [...screens, ...(exception ? [exception] : [])]) {
      const name = path === exception ? '/exception' : path
      if (!only.test(name)) continue
      await goTo(page, path)
      await page.locator('main').waitFor()
      await still(page)
      await shoot(page, name)
    }
    await lab.stop()
    for (const path of ['/menu/devices', '/now']) {
      await goTo(page, path)
      await page.waitForTimeout(500)
      await shoot(page, `${path}, server away`)
    }
  } catch (thrown) {
    await page.screenshot({ path: join(given.out, 'stopped-here.png') })
    throw thrown
  } finally {
    await lab.end()
  }
}

const onStage = async (): Promise<void> => {
  const { origin, server } = await serveStage()
  try {
    for (const name of Object.keys(scenes)) {
      if (!only.test(name)) continue
      await page.goto(`${origin}/?scene=${name}&theme=${themes[0]}&language=${given.language}`)
      await page.locator('main').waitFor()
      await page.locator('html[data-staged]').waitFor({ state: 'attached' })
      await still(page)
      await shoot(page, name)
    }
  } finally {
    server.close()
  }
}

try {
  if (given.of.includes('app')) await ofApp()
  if (given.of.includes('stage')) await onStage()
} finally {
  await close()
}

for (const [size, ofSize] of taken) console.log((await writeSheets(given.out, size, [...ofSize.values()])).map((file) => join(given.out, file)).join('\n'))
const figures = [...taken].map(([size, ofSize]) => `<h2>${size}</h2>${[...ofSize.values()].flat().map(({ name, file }) => `<figure><img loading="lazy" src="${file}"><figcaption>${name}</figcaption></figure>`).join('')}`).join('')
writeFileSync(join(given.out, 'index.html'), `<!doctype html><meta charset="utf-8"><title>Screens</title><style>body{background:#777;color:#fff;font:16px sans-serif}figure{display:inline-block;margin:8px;vertical-align:top}img{max-width:44vw}</style>${figures}`)
console.log(`${[...taken.values()].reduce((sum, it) => sum + it.size, 0)} screens by size, ${join(given.out, 'index.html')}`)
for (const it of complaints) console.error(it)
process.exitCode = complaints.length ? 1 : 0
