import { chromium, type Page } from 'playwright-core'
import type { Arrived } from '../../src/projections/line.ts'
import { executablePath, found, Laboratory, Phone, readyForNoNetwork, unlock } from '../browser/harness.ts'
import { phoneSize } from '../browser/phone-size.ts'
import { builtPage } from './built-page.ts'
import { median, millisecondsText, percentile, type Figure } from './figure.ts'
import { manyEntries } from './history.ts'
import type { PhoneBench } from './phone-page.ts'

const slowdown = 4
const person = 'Rosa Kern'
const rowsAtOnce = 5000

interface Opened {
  page: Page
  close(): Promise<void>
}

/** A browser on the phone's profile, slowed down before it goes anywhere. */
const openSlowly = async (profile: string): Promise<Opened> => {
  const context = await chromium.launchPersistentContext(profile, {
    executablePath, headless: true, bypassCSP: true, viewport: phoneSize, deviceScaleFactor: 2, hasTouch: true, isMobile: true, locale: 'en-GB', args: ['--no-sandbox', '--disable-gpu', '--no-first-run', '--disable-background-networking'],
  })
  context.setDefaultTimeout(180_000)
  const page = await context.newPage()
  await page.addInitScript(() => {
    Object.assign(globalThis, { paints: [] as number[] })
    new PerformanceObserver((list) => (globalThis as unknown as { paints: number[] }).paints.push(...list.getEntries().map(({ startTime }) => startTime))).observe({ type: 'largest-contentful-paint', buffered: true })
  })
  const session = await context.newCDPSession(page)
  await session.send('Emulation.setCPUThrottlingRate', { rate: slowdown })
  return { page, close: () => context.close() }
}

const fill = async (page: Page, arrived: readonly Arrived[]): Promise<void> => {
  for (let from = 0; from < arrived.length; from += rowsAtOnce) {
    const rows = arrived.slice(from, from + rowsAtOnce).map(({ entry }, index) => ({
      status: 'valid', entry, h: (from + index).toString(16).padStart(64, '0'), sig: 's'.repeat(86), time: Date.parse(entry.at), epoch: 'bench', gseq: 1_000_000 + from + index, recvAt: Date.parse(entry.at) + 2000,
    }))
    await page.evaluate(
      (given) =>
        new Promise<void>((resolve, reject) => {
          const asked = indexedDB.open('bathkeeper')
          asked.onsuccess = () => {
            const transaction = asked.result.transaction('entries', 'readwrite')
            for (const row of given) transaction.objectStore('entries').put(row)
            transaction.oncomplete = () => (asked.result.close(), resolve())
            transaction.onabort = () => reject(transaction.error ?? new Error('aborted'))
          }
        }),
      rows,
    )
  }
}

const opening = async (profile: string, origin: string): Promise<{ paint: number; now: number }> => {
  const { page, close } = await openSlowly(profile)
  await page.goto(origin)
  await page.getByRole('heading', { name: 'Who has the phone?' }).waitFor()
  await page.waitForTimeout(1000)
  const paint = await page.evaluate(() => (globalThis as unknown as { paints: number[] }).paints.at(-1)!)
  const began = performance.now()
  await unlock(page, person)
  const now = performance.now() - began
  await close()
  return { paint, now }
}

/** A phone that holds years: how soon the app is there without a network, and how soon an entry is on the disk. */
export const fullPhone = async (counts: readonly number[] = [1_000, 10_000, 100_000], saves = 200): Promise<Figure[]> => {
  const script = await builtPage('phone-page.ts')
  const laboratory = new Laboratory()
  await laboratory.start()
  const phone = new Phone(laboratory.origin)
  const figures: Figure[] = []
  try {
    await found(await phone.open(`/#enrol=${laboratory.code}`), person)
    await readyForNoNetwork(phone.page)
    await phone.close()
    await laboratory.stop()
    const all = manyEntries(counts.at(-1)!, Date.now() - 3_600_000)
    let filled = 0
    for (const count of counts) {
      const { page, close } = await openSlowly(phone.profile)
      await page.route(`${laboratory.origin}/bench`, (route) => route.fulfill({ contentType: 'text/html', body: '<!doctype html><title>bench</title>' }))
      await page.goto(`${laboratory.origin}/bench`)
      // The plan, then the newest: whatever the phone holds, it ends now.
      if (!filled) await fill(page, all.slice(0, 1))
      await fill(page, all.slice(Math.max(1, all.length - count), all.length - filled))
      filled = count
      await page.addScriptTag({ content: script })
      const look = all.findLast(({ entry }) => entry.kind === 'reading')!.entry.data
      const times = await page.evaluate(
        ([many, data]) => {
          const { phoneBench } = globalThis as unknown as { phoneBench: PhoneBench }
          phoneBench.openKept()
          return phoneBench.saves(many, data)
        },
        [saves, look] as const,
      )
      await close()
      // The first opening folds all of it and puts a snapshot away; those after it are the ordinary ones.
      await opening(phone.profile, laboratory.origin)
      const openings = [await opening(phone.profile, laboratory.origin), await opening(phone.profile, laboratory.origin), await opening(phone.profile, laboratory.origin)]
      const paint = median(openings.map((it) => it.paint))
      const [p50, p95, p99] = [0.5, 0.95, 0.99].map((share) => percentile(times, share)) as [number, number, number]
      const isLast = count === counts.at(-1)
      const thousands = count.toLocaleString('en')
      figures.push(
        {
          what: `an entry hashed, signed and on the disk, ${thousands} entries on the phone, Chromium at ${slowdown}× CPU throttle`, figure: `p50 ${millisecondsText(p50)}, p95 ${millisecondsText(p95)}, p99 ${millisecondsText(p99)}`,
          against: '', ratio: null, goal: isLast ? 'p95 ≤ 50 ms, p99 ≤ 150 ms' : '', isMet: isLast ? p95 <= 50 && p99 <= 150 : null, note: `${saves} entries, a pause before each`,
        },
        {
          what: `cold start without a network to the largest paint, ${thousands} entries on the phone, Chromium at ${slowdown}× CPU throttle`, figure: millisecondsText(paint), against: '', ratio: null,
          goal: isLast ? '≤ 1.0 s' : '', isMet: isLast ? paint <= 1000 : null, note: `${openings.length} openings of the browser; from a snapshot, with the fold of the last eight days`,
        },
      )
    }
    return figures
  } finally {
    await phone.end()
    await laboratory.end()
  }
}
