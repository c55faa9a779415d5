import { spawn, type ChildProcess } from 'node:child_process'
import { mkdtempSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { chromium, type BrowserContext, type Page } from 'playwright-core'
import { executablePath } from '../browser/harness.ts'
import { freePort, startServer } from '../server/kill.ts'
import { Phone, proofOf } from '../server/phone.ts'
import { builtPage } from './built-page.ts'
import { median, type Figure } from './figure.ts'
import { folder as here, installOwnPackages } from './own-packages.ts'
import type { PhoneBench, Synced } from './phone-page.ts'
import type { PouchBench } from './pouch-page.ts'

type Measured = Omit<Synced, 'entries'>
interface Turn {
  push: Measured
  pull: Measured
}

const inPage = async (context: BrowserContext, address: string, ...scripts: readonly string[]): Promise<Page> => {
  const page = await context.newPage()
  page.setDefaultTimeout(600_000)
  await page.goto(address)
  for (const content of scripts) await page.addScriptTag({ content })
  return page
}

const passphrase = 'silver nitrate in the dark'

/** Our phone's own code in Chromium against our server program. */
const ours = async (context: BrowserContext, script: string, count: number): Promise<Turn> => {
  const folder = mkdtempSync(join(tmpdir(), 'bathkeeper-sync-'))
  const server = await startServer({ folder, port: await freePort() })
  try {
    const supervisor = new Phone(fetch, server.origin)
    const { person } = await supervisor.enrol(server.code!, { name: 'Helena Sobral', passphrase })
    const proof = supervisor.presence(await proofOf({ phone: supervisor, person: person!, passphrase }))
    const letIn = async (name: string): Promise<Page> => {
      const page = await inPage(context, `${server.origin}/healthz`, script)
      const code = (await (await supervisor.send('POST', '/api/v1/codes', undefined, proof)).json()) as { long: string }
      const { digits, dev } = await page.evaluate(([it, key]) => (globalThis as unknown as { phoneBench: PhoneBench }).phoneBench.enrol(it, key), [name, code.long] as const)
      const confirmed = await supervisor.send('POST', `/api/v1/devices/${dev}/confirm`, { digits }, proof)
      if (confirmed.status !== 200) throw new Error(`confirm: ${confirmed.status}`)
      await page.evaluate(() => (globalThis as unknown as { phoneBench: PhoneBench }).phoneBench.confirm())
      return page
    }
    const sync = (page: Page): ReturnType<PhoneBench['sync']> => page.evaluate(() => (globalThis as unknown as { phoneBench: PhoneBench }).phoneBench.sync())
    const first = await letIn('first')
    await first.evaluate((it) => (globalThis as unknown as { phoneBench: PhoneBench }).phoneBench.queue(it), count)
    const { push } = await sync(first)
    await first.close()
    const second = await letIn('second')
    const { pull } = await sync(second)
    await second.close()
    if (push.entries !== count || pull.entries !== count) throw new Error(`${push.entries} sent and ${pull.entries} received of ${count}`)
    return { push, pull }
  } finally {
    await server.stop('SIGKILL')
    rmSync(folder, { recursive: true, force: true })
  }
}

const startPouch = async (folder: string): Promise<{ process: ChildProcess; origin: string }> => {
  const child = spawn(process.execPath, ['pouch-server.mjs', folder], { cwd: here, stdio: ['pipe', 'pipe', 'inherit'] })
  const port = await new Promise<string>((resolve, reject) => {
    child.stdout.once('data', (chunk: Buffer) => resolve(chunk.toString().trim()))
    child.once('exit', (status) => reject(new Error(`the PouchDB server ended with ${status}`)))
  })
  return { process: child, origin: `http://localhost:${port}` }
}

const theirs = async (context: BrowserContext, scripts: readonly string[], count: number): Promise<Turn> => {
  const folder = mkdtempSync(join(tmpdir(), 'bathkeeper-pouch-'))
  const server = await startPouch(folder)
  try {
    const page = await inPage(context, server.origin, ...scripts)
    await page.evaluate((it) => (globalThis as unknown as { pouchBench: PouchBench }).pouchBench.queue(it), count)
    const run = (way: 'push' | 'pull') =>
      page.evaluate(([it, remote]) => (globalThis as unknown as { pouchBench: PouchBench }).pouchBench[it](remote), [way, `${server.origin}/record`] as const)
    const turn = { push: await run('push'), pull: await run('pull') }
    if (turn.push.documents !== count || turn.pull.documents !== count) throw new Error(`${turn.push.documents} and ${turn.pull.documents} of ${count} documents`)
    await page.close()
    return turn
  } finally {
    server.process.kill('SIGKILL')
    rmSync(folder, { recursive: true, force: true })
  }
}

/** A queue of days into the server, and the server's record into a new phone; beside PouchDB with documents of the same content, in turn. */
export const syncAgainstPouch = async (count = 10_000, times = 2): Promise<Figure[]> => {
  installOwnPackages()
  const [ourScript, theirPage] = [await builtPage('phone-page.ts'), await builtPage('pouch-page.ts')]
  const theirScripts = [theirPage, readFileSync(`${here}node_modules/pouchdb/dist/pouchdb.min.js`, 'utf8')]
  const profile = mkdtempSync(join(tmpdir(), 'bathkeeper-sync-profile-'))
  const context = await chromium.launchPersistentContext(profile, { executablePath, headless: true, bypassCSP: true, args: ['--no-sandbox', '--disable-gpu'] })
  try {
    const turns: { ours: Turn; theirs: Turn }[] = []
    for (let time = 0; time < times; time++) turns.push({ ours: await ours(context, ourScript, count), theirs: await theirs(context, theirScripts, count) })
    const middle = (side: 'ours' | 'theirs', way: 'push' | 'pull', what: keyof Measured): number => median(turns.map((turn) => turn[side][way][what]))
    const text = (side: 'ours' | 'theirs', way: 'push' | 'pull'): string => {
      const [milliseconds, up, down, requests] = (['milliseconds', 'bytesUp', 'bytesDown', 'requests'] as const).map((what) => middle(side, way, what))
      return `${(milliseconds! / 1000).toFixed(1)} s, ${((up! + down!) / 1e6).toFixed(1)} MB, ${requests} requests`
    }
    const bytes = (side: 'ours' | 'theirs', way: 'push' | 'pull'): number => middle(side, way, 'bytesUp') + middle(side, way, 'bytesDown')
    const figure = (way: 'push' | 'pull', what: string): Figure => {
      const ratio = middle('theirs', way, 'milliseconds') / middle('ours', way, 'milliseconds')
      const isLess = bytes('ours', way) < bytes('theirs', way) && middle('ours', way, 'requests') <= middle('theirs', way, 'requests') / 4
      return {
        what, figure: text('ours', way), against: `PouchDB 9 and express-pouchdb on LevelDB, ${text('theirs', way)}`, ratio,
        goal: way === 'push' ? '≥ 3 × as fast, fewer bytes, a quarter of the requests' : '≥ 3 × as fast', isMet: ratio >= 3 && (way === 'pull' || isLess),
        note: 'both in Chromium, 200 at a time; ours signed, verified and forced to the disk on both sides, theirs neither',
      }
    }
    const thousands = count.toLocaleString('en')
    return [figure('push', `${thousands} queued entries from a phone into the server`), figure('pull', `${thousands} entries into a new phone`)]
  } finally {
    await context.close()
    rmSync(profile, { recursive: true, force: true })
  }
}
