// Everything that must hold before a change goes in: `node tests/run.mjs`, and `node tests/run.mjs long` for what takes longer.
// Plain Node, as it runs before anything is installed. Ends with one line: `N passed, N failed`.
import { spawnSync } from 'node:child_process'
import { chmodSync, existsSync, mkdtempSync, readFileSync, rmSync, statfsSync, statSync } from 'node:fs'
import { availableParallelism, tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'

const top = fileURLToPath(new URL('..', import.meta.url))
const at = (path) => join(top, path)
const isLong = process.argv[2] === 'long'
const count = { passed: 0, failed: 0 }

/** Records and profiles of browsers are kept in memory where there is room: a disk is waited for at each saving. What a killed program leaves behind is the same. */
const inMemory = '/dev/shm'
const hasRoom = existsSync(inMemory) && (({ bavail, bsize }) => bavail * bsize > 4e9)(statfsSync(inMemory))
const scratch = mkdtempSync(join(hasRoom ? inMemory : tmpdir(), 'bathkeeper-tests-'))
// PostgreSQL runs as somebody else and must get through.
chmodSync(scratch, 0o711)
process.env.TMPDIR = scratch
process.on('exit', () => rmSync(scratch, { recursive: true, force: true, maxRetries: 5 }))

const run = (command, args) => spawnSync(command, args, { cwd: top, stdio: 'inherit' }).status === 0
const bin = (name) => at(`node_modules/.bin/${name}`)

const stage = (name, work) => {
  console.log(`\n── ${name}`)
  const ok = work()
  count[ok ? 'passed' : 'failed']++
  if (!ok) console.log(`── ${name}: failed`)
  return ok
}

/** Two at least: a test waits for a server, a browser or a disk half of its time. Left to itself, vitest keeps a processor free. */
const workers = Math.max(2, availableParallelism() - 1)

/** Projects of vitest, side by side; their tests are counted one by one. */
const suite = (...projects) => {
  console.log(`\n── ${projects.join(' and ')} tests`)
  const folder = mkdtempSync(join(tmpdir(), 'bathkeeper-tests-'))
  const report = join(folder, 'report.json')
  const ok = run(bin('vitest'), ['run', '--config', 'tests/vitest.config.ts', ...projects.flatMap((it) => ['--project', it]), ...(isLong ? [] : [`--maxWorkers=${workers}`]), '--reporter=default', '--reporter=json', `--outputFile.json=${report}`])
  if (existsSync(report)) {
    const { numPassedTests, numFailedTests, numFailedTestSuites } = JSON.parse(readFileSync(report, 'utf8'))
    count.passed += numPassedTests
    count.failed += numFailedTests || (ok ? 0 : Math.max(1, numFailedTestSuites))
  } else count.failed++
  rmSync(folder, { recursive: true, force: true })
}

const browser = () =>
  [process.env.CHROMIUM_PATH, '/usr/bin/chromium', '/usr/bin/chromium-browser', '/usr/bin/google-chrome'].find((path) => path && existsSync(path))

const isHere = (path) => existsSync(path) || (process.env.PATH ?? '').split(':').some((folder) => existsSync(join(folder, path)))

const typelib = `/usr/lib/${{ x64: 'x86_64', arm64: 'aarch64' }[process.arch] ?? process.arch}-linux-gnu/girepository-1.0/WebKit2-4.1.typelib`

/** The other two engines: what each is driven by, and what Debian calls it. */
const engines = [
  { name: 'firefox', needs: [process.env.FIREFOX_PATH ?? '/usr/bin/firefox-esr'], packages: 'firefox-esr' },
  { name: 'webkit', needs: ['WebKitWebDriver', 'Xvfb', 'gjs', typelib], packages: 'webkit2gtk-driver gir1.2-webkit2-4.1 gjs xvfb' },
]
const lackOf = ({ needs }) => needs.filter((it) => !isHere(it))

const installed = at('node_modules/.package-lock.json')
const isInstalled = existsSync(installed) && statSync(installed).mtimeMs >= statSync(at('package-lock.json')).mtimeMs - 1000

if (!isInstalled && !stage('install', () => run('npm', ['ci']))) {
  console.log('\n0 passed, 1 failed')
  process.exit(1)
}
const build = () => stage('build', () => run(bin('vite'), ['build', '--config', 'src/vite.config.ts', '--logLevel', 'warn']))
const chromium = browser()
if (chromium) process.env.CHROMIUM_PATH = chromium
const absent = engines.filter((it) => lackOf(it).length)
const present = engines.filter((it) => !absent.includes(it)).map(({ name }) => name)

if (isLong) {
  build()
  if (present.length) suite(...present.map((name) => `${name} long`))
  suite('long')
} else {
  stage('types', () => run(bin('tsc'), ['-b']))
  stage('lint', () => run(bin('eslint'), ['-c', 'tests/eslint.config.js', 'src', 'sw', 'tests']))
  build()
  suite('unit')
  if (!chromium) {
    console.log('\nThe browser tests need a Chromium: install one (Debian: apt-get install chromium) or name it in CHROMIUM_PATH.')
    count.failed++
  }
  const all = [...(chromium ? ['browser'] : []), ...present]
  if (all.length) suite(...all)
}
for (const it of absent) console.log(`\n!! THE MAIN JOB WAS NOT RUN IN ${it.name.toUpperCase()}: ${lackOf(it).join(', ')} not found. Debian: apt-get install ${it.packages}`)
console.log(`\n${count.passed} passed, ${count.failed} failed`)
process.exit(count.failed ? 1 : 0)
