import { execFileSync } from 'node:child_process'
import { existsSync, readdirSync, readFileSync, statSync } from 'node:fs'
import { join } from 'node:path'
import { gzipSync } from 'node:zlib'
import { beforeAll, describe, expect, it } from 'vitest'

const top = new URL('..', import.meta.url).pathname
const dist = join(top, 'dist')
const kilobytes = (bytes: number): number => bytes / 1000
const zipped = (path: string): number => gzipSync(readFileSync(join(dist, path)), { level: 9 }).length

const newest = (folder: string): number =>
  readdirSync(join(top, folder), { recursive: true, withFileTypes: true }).reduce((latest, it) => (it.isFile() ? Math.max(latest, statSync(join(it.parentPath, it.name)).mtimeMs) : latest), 0)

/** The entry and what it imports before anything can be drawn. */
const firstLoad = (): string[] => {
  const page = readFileSync(join(dist, 'index.html'), 'utf8')
  const found = new Set([...page.matchAll(/(?:src|href)="\/(assets\/[^"]+\.js)"/g)].map((match) => match[1]!))
  for (const path of found)
    for (const [, name] of readFileSync(join(dist, path), 'utf8').matchAll(/(?:from|import)\s*"\.\/([^"]+\.js)"/g)) found.add(`assets/${name}`)
  return [...found]
}

describe('what a phone must fetch', () => {
  beforeAll(() => {
    const built = existsSync(join(dist, 'index.html')) ? statSync(join(dist, 'index.html')).mtimeMs : 0
    if (built < Math.max(newest('src'), newest('sw'))) execFileSync(join(top, 'node_modules/.bin/vite'), ['build', '--config', 'src/vite.config.ts', '--logLevel', 'error'], { cwd: top, env: { ...process.env, NODE_ENV: 'production' } })
  })

  it('is at most 60 kB of script before the first screen', () => {
    expect(kilobytes(firstLoad().reduce((sum, path) => sum + zipped(path), 0))).toBeLessThanOrEqual(60)
  })

  it('is at most 10 kB of style', () => {
    const page = readFileSync(join(dist, 'index.html'), 'utf8')
    const styles = [...page.matchAll(/href="\/(assets\/[^"]+\.css)"/g)].map((match) => match[1]!)
    expect(styles.length).toBeGreaterThan(0)
    expect(kilobytes(styles.reduce((sum, path) => sum + zipped(path), 0))).toBeLessThanOrEqual(10)
  })

  it('is at most 15 kB of service worker', () => {
    expect(kilobytes(zipped('sw.js'))).toBeLessThanOrEqual(15)
  })

  const listed = (): string[] => [...new Set([...readFileSync(join(dist, 'sw.js'), 'utf8').matchAll(/"?url"?:\s*"([^"]+)"/g)].map((match) => match[1]!))]
  const isLater = (path: string): boolean => path.startsWith('later/')
  const weight = (paths: readonly string[]): number => kilobytes(paths.reduce((sum, path) => sum + zipped(path), 0))

  it('is at most 400 kB until a round can be walked without a network, the meter reader apart', () => {
    const first = listed().filter((path) => !isLater(path))
    expect(first).toContain('index.html')
    expect(first.filter((path) => path.startsWith('reader/'))).toEqual([])
    expect(weight(first)).toBeLessThanOrEqual(400)
  })

  it('is at most 200 kB more until all of it works without one', () => {
    const more = listed().filter(isLater)
    expect(more.length).toBeGreaterThan(5)
    expect(weight(more)).toBeLessThanOrEqual(200)
  })

  it('needs nothing of the later files for a screen of the first ones', () => {
    for (const path of listed().filter((it) => it.startsWith('assets/') && it.endsWith('.js')))
      expect(readFileSync(join(dist, path), 'utf8'), path).not.toMatch(/(?:from|import)\s*"\.\.\/later\//)
  })
})
