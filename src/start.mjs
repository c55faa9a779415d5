// `npm start` on a fresh clone: installs, builds and serves. Plain Node, as it runs before anything is installed.
import { spawn, spawnSync } from 'node:child_process'
import { existsSync, readdirSync, statSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'

const top = fileURLToPath(new URL('..', import.meta.url))
const at = (path) => join(top, path)
const changed = (path) => (existsSync(at(path)) ? statSync(at(path)).mtimeMs : 0)

const newest = (folder) =>
  readdirSync(at(folder), { recursive: true, withFileTypes: true }).reduce(
    (latest, entry) => (entry.isFile() ? Math.max(latest, statSync(join(entry.parentPath ?? entry.path, entry.name)).mtimeMs) : latest),
    0,
  )

const must = (sentence, command, args) => {
  console.log(sentence)
  const { status } = spawnSync(command, args, { cwd: top, stdio: ['ignore', 'ignore', 'inherit'] })
  if (status === 0) return
  console.error('That failed; the lines above say why. Nothing recorded was touched.')
  process.exit(1)
}

if (changed('node_modules/.package-lock.json') < changed('package-lock.json') - 1000) must('Installing (about a minute) …', 'npm', ['ci'])
if (changed('dist/index.html') < Math.max(newest('src'), newest('sw'), newest('icons'), changed('package.json')))
  must('Building …', at('node_modules/.bin/vite'), ['build', '--config', 'src/vite.config.ts', '--logLevel', 'error'])

const server = spawn(process.execPath, ['--import', 'tsx', at('src/server/main.ts')], { cwd: top, stdio: 'inherit' })
for (const signal of ['SIGINT', 'SIGTERM']) process.on(signal, () => server.kill(signal))
server.on('exit', (code, signal) => process.exit(code ?? (signal ? 1 : 0)))
