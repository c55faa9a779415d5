import { execFileSync } from 'node:child_process'
import { existsSync, readFileSync } from 'node:fs'
import { dirname, join, normalize } from 'node:path'
import { describe, expect, it } from 'vitest'

const top = new URL('..', import.meta.url).pathname
const files = execFileSync('git', ['ls-files', '-co', '--exclude-standard'], { cwd: top, encoding: 'utf8' })
  .split('\n')
  .filter((path) => path && existsSync(join(top, path)))

/** Who may import whom; a room may always import itself. The table in DEVELOPERS.md says why. */
const plain = ['science', 'plan', 'record', 'projections', 'rounds', 'safety', 'corrections', 'wire', 'demo', 'reader']
const walls: Record<string, readonly string[]> = {
  science: [],
  plan: ['science'],
  record: ['plan'],
  projections: ['science', 'plan', 'record'],
  rounds: ['science', 'plan', 'record', 'projections'],
  safety: ['science', 'plan'],
  corrections: ['science', 'plan', 'record', 'projections', 'safety'],
  wire: ['plan', 'record'],
  demo: plain,
  reader: [],
  device: ['plan', 'record', 'projections', 'wire', 'reader'],
  ui: [...plain, 'device'],
  server: plain,
  terminal: [...plain, 'server'],
  sw: ['device'],
}
/** Packages by room; rooms that are not named take what they need. */
const packages: Record<string, readonly string[]> = {
  science: ['zod/mini', 'psychrolib'],
  plan: ['zod/mini'],
  record: ['zod/mini'],
  projections: ['zod/mini'],
  rounds: ['zod/mini'],
  safety: ['zod/mini'],
  corrections: ['zod/mini'],
  wire: ['zod/mini'],
  demo: ['zod/mini'],
  reader: [],
}

const roomOf = (path: string): string | undefined => /^src\/([^/]+)\//.exec(path)?.[1] ?? (path.startsWith('sw/') ? 'sw' : undefined)
const sources = files.filter((path) => /^(src|sw)\/.*\.tsx?$/.test(path) && roomOf(path) !== undefined)

const importsOf = (path: string): string[] =>
  [...readFileSync(join(top, path), 'utf8').matchAll(/(?:\bfrom |^import |\bimport\()'([^'\n]+)'(?:$|\)| with)/gm)].map((match) => match[1]!)

describe('the house', () => {
  it('keeps its walls: a room imports only the rooms that it may see', () => {
    const broken = sources.flatMap((path) => {
      const room = roomOf(path)!
      return importsOf(path)
        .filter((it) => it.startsWith('.'))
        .map((it) => roomOf(normalize(join(dirname(path), it))))
        .filter((other) => other !== undefined && other !== room && !(walls[room] ?? []).includes(other))
        .map((other) => `${path} imports ${other}`)
    })
    expect(broken).toEqual([])
  })

  it('names every room', () => {
    expect([...new Set(sources.map((path) => roomOf(path)!))].filter((room) => !(room in walls))).toEqual([])
  })

  it('keeps packages out of the pure rooms', () => {
    const broken = sources.flatMap((path) => {
      const allowed = packages[roomOf(path)!]
      return allowed ? importsOf(path).filter((it) => !it.startsWith('.') && !allowed.includes(it)).map((it) => `${path} imports ${it}`) : []
    })
    expect(broken).toEqual([])
  })

  it('has neither clock nor chance nor browser in the pure rooms', () => {
    const forbidden = /\b(Date\.now\(|new Date\(\)|Math\.random\(|performance\.now\(|crypto\.|document\.|localStorage|fetch\()/
    const broken = sources
      .filter((path) => plain.includes(roomOf(path)!))
      .flatMap((path) =>
        readFileSync(join(top, path), 'utf8')
          .split('\n')
          .flatMap((line, index) => (forbidden.test(line.replace(/\/\/.*$|^\s*\*.*$/, '')) ? [`${path}:${index + 1} ${line.trim()}`] : [])),
      )
    expect(broken).toEqual([])
  })

  it('has at its top what its card allows, and nothing else', () => {
    const allowed = ['README.md', 'DEVELOPERS.md', 'package.json', 'package-lock.json', 'tsconfig.json', 'LICENSE', 'src', 'sw', 'tests', 'icons']
    expect([...new Set(files.map((path) => path.split('/')[0]!))].filter((name) => !allowed.includes(name) && !name.startsWith('.'))).toEqual([])
  })

  it('leaves nothing switched off or unfinished', () => {
    const marks = new RegExp(['\\b(it|test|describe)\\.(skip|only|todo)\\b', 'TO' + 'DO', 'FIX' + 'ME', '@ts-' + 'ignore', 'eslint-' + 'disable(?!-next-line @typescript-eslint/no-explicit-any)'].join('|'))
    const found = files
      .filter((path) => /^(src|sw|tests)\/.*\.tsx?$/.test(path) && path !== 'tests/house.test.ts')
      .flatMap((path) => readFileSync(join(top, path), 'utf8').split('\n').flatMap((line, index) => (marks.test(line) ? [`${path}:${index + 1} ${line.trim()}`] : [])))
    expect(found).toEqual([])
  })
})
