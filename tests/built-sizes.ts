import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { gzipSync } from 'node:zlib'

/** Sizes of what was built, as it is sent: in kB of gzip. */
export const dist = new URL('../dist', import.meta.url).pathname

const zipped = (path: string): number => gzipSync(readFileSync(join(dist, path)), { level: 9 }).length
export const weight = (paths: readonly string[]): number => paths.reduce((sum, path) => sum + zipped(path), 0) / 1000

/** The entry and what it imports before anything can be drawn. */
export const firstLoad = (): string[] => {
  const page = readFileSync(join(dist, 'index.html'), 'utf8')
  const found = new Set([...page.matchAll(/(?:src|href)="\/(assets\/[^"]+\.js)"/g)].map((match) => match[1]!))
  for (const path of found)
    for (const [, name] of readFileSync(join(dist, path), 'utf8').matchAll(/(?:from|import)\s*"\.\/([^"]+\.js)"/g)) found.add(`assets/${name}`)
  return [...found]
}

/** What the service worker keeps: the precache, and `later/`. */
export const kept = (): string[] => [...new Set([...readFileSync(join(dist, 'sw.js'), 'utf8').matchAll(/"?url"?:\s*"([^"]+)"/g)].map((match) => match[1]!))]
export const isLater = (path: string): boolean => path.startsWith('later/')
