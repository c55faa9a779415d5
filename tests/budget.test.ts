import { execFileSync } from 'node:child_process'
import { existsSync, readdirSync, readFileSync, statSync } from 'node:fs'
import { join } from 'node:path'
import { beforeAll, describe, expect, it } from 'vitest'
import { dist, firstLoad, isLater, kept, weight } from './built-sizes.ts'

const top = new URL('..', import.meta.url).pathname
const newest = (folder: string): number =>
  readdirSync(join(top, folder), { recursive: true, withFileTypes: true }).reduce((latest, it) => (it.isFile() ? Math.max(latest, statSync(join(it.parentPath, it.name)).mtimeMs) : latest), 0)

describe('what a phone must fetch', () => {
  beforeAll(() => {
    const built = existsSync(join(dist, 'index.html')) ? statSync(join(dist, 'index.html')).mtimeMs : 0
    if (built < Math.max(newest('src'), newest('sw'))) execFileSync(join(top, 'node_modules/.bin/vite'), ['build', '--config', 'src/vite.config.ts', '--logLevel', 'error'], { cwd: top, env: { ...process.env, NODE_ENV: 'production' } })
  })

  it('is at most 60 kB of script before the first screen', () => {
    expect(weight(firstLoad())).toBeLessThanOrEqual(60)
  })

  it('is at most 10 kB of style', () => {
    const page = readFileSync(join(dist, 'index.html'), 'utf8')
    const styles = [...page.matchAll(/href="\/(assets\/[^"]+\.css)"/g)].map((match) => match[1]!)
    expect(styles.length).toBeGreaterThan(0)
    expect(weight(styles)).toBeLessThanOrEqual(10)
  })

  it('is at most 15 kB of service worker', () => {
    expect(weight(['sw.js'])).toBeLessThanOrEqual(15)
  })

  it('is at most 400 kB until a round can be walked without a network, the meter reader apart', () => {
    const first = kept().filter((path) => !isLater(path))
    expect(first).toContain('index.html')
    expect(first.filter((path) => path.startsWith('reader/'))).toEqual([])
    expect(weight(first)).toBeLessThanOrEqual(400)
  })

  it('is at most 200 kB more until all of it works without one', () => {
    const more = kept().filter(isLater)
    expect(more.length).toBeGreaterThan(5)
    expect(weight(more)).toBeLessThanOrEqual(200)
  })

  it('needs nothing of the later files for a screen of the first ones', () => {
    for (const path of kept().filter((it) => it.startsWith('assets/') && it.endsWith('.js')))
      expect(readFileSync(join(dist, path), 'utf8'), path).not.toMatch(/(?:from|import)\s*"\.\.\/later\//)
  })
})
