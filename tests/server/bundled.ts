import { existsSync, mkdirSync, readdirSync, renameSync, statSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { build, type Rollup } from 'vite'

const top = fileURLToPath(new URL('../..', import.meta.url))
const cache = join(top, 'node_modules/.cache/tests')

const newest = (folder: string): number =>
  readdirSync(folder, { recursive: true, withFileTypes: true }).reduce((latest, it) => (it.isFile() ? Math.max(latest, statSync(join(it.parentPath, it.name)).mtimeMs) : latest), 0)

/** The server program in one file, which is up in half the time where it is started again and again. `start.test.ts` starts it as people do. */
export const bundledServer = async (): Promise<string> => {
  const file = join(cache, 'server.mjs')
  if (existsSync(file) && statSync(file).mtimeMs > newest(join(top, 'src'))) return file
  const entry = join(top, 'src/server/main.ts')
  const built = (await build({
    root: top, configFile: false, logLevel: 'silent',
    // What lies beside it is looked for from where it stands in the source.
    define: { 'import.meta.url': JSON.stringify(new URL('../../src/server/main.ts', import.meta.url).href) },
    build: { ssr: entry, write: false, target: 'node20', minify: false },
  })) as Rollup.RollupOutput
  mkdirSync(cache, { recursive: true })
  // Whole or not at all: another test may be reading it.
  writeFileSync(`${file}.${process.pid}`, built.output[0].code)
  renameSync(`${file}.${process.pid}`, file)
  return file
}
