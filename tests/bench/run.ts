import 'temporal-polyfill/global'
import { execFileSync } from 'node:child_process'
import { readFileSync, writeFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { between } from '../truth/readme.ts'
import { bathsAgainstFullDoses } from './baths.ts'
import { calcBatch } from './calc-batch.ts'
import { chartAgainstPlain } from './chart.ts'
import { calculationsInChromium } from './chromium.ts'
import { machineText, tableOf, type Figure } from './figure.ts'
import { foldAgainstParse } from './fold.ts'
import { fiveHundredPhones } from './five-hundred.ts'
import { serverGrowth } from './growth.ts'
import { ingest } from './ingest.ts'
import { soak } from './soak.ts'
import { fullPhone } from './full-phone.ts'
import { lighthouse } from './lighthouse.ts'
import { meterReader } from './meter-reader.ts'
import { syncAgainstPouch } from './sync.ts'

type Parts = Readonly<Record<string, () => Promise<Figure[]> | Figure[]>>

/** `npm run bench`: everything, as one table and as latest.json beside this. `-- --readme` puts the table into README; words name parts to run alone. */
const usual: Parts = {
  calc: async () => [await calcBatch()],
  chromium: () => calculationsInChromium(),
  chart: () => chartAgainstPlain(),
  fold: async () => [await foldAgainstParse()],
  ingest: () => ingest(),
  sync: () => syncAgainstPouch(),
  phone: () => fullPhone(),
  lighthouse: () => lighthouse(),
  crowd: () => fiveHundredPhones(),
  growth: () => serverGrowth([10_000, 100_000, 1_000_000]),
  baths: () => bathsAgainstFullDoses(1000),
  reader: () => meterReader(420),
}

/** `npm run bench:long`: hours. */
const long: Parts = {
  growth: () => serverGrowth([10_000, 100_000, 1_000_000, 10_000_000]),
  soak: () => soak(120),
}

const args = process.argv.slice(2)
const wanted = args.filter((arg) => !arg.startsWith('--'))
const isLong = args.includes('--long')
const parts = isLong ? long : usual
const unknown = wanted.filter((name) => !(name in parts))
if (unknown.length) throw new Error(`no part ${unknown.join(', ')}; there are ${Object.keys(parts).join(', ')}`)

// What these open is the built app, as it is now.
const needBuild = ['phone', 'lighthouse']
const top = fileURLToPath(new URL('../..', import.meta.url))
if (needBuild.some((name) => name in parts && (!wanted.length || wanted.includes(name)))) execFileSync(`${top}node_modules/.bin/vite`, ['build', '--config', 'src/vite.config.ts', '--logLevel', 'warn'], { cwd: top, stdio: ['ignore', 'ignore', 'inherit'] })

const figures: Figure[] = []
for (const [name, part] of Object.entries(parts)) {
  if (wanted.length && !wanted.includes(name)) continue
  process.stderr.write(`${name} …\n`)
  figures.push(...(await part()))
}
const measuredOn = new Date().toISOString().slice(0, 10)
const text = `${tableOf(figures)}\n\nMeasured ${measuredOn} on ${machineText()}.`
console.log(text)

// A part by itself is for whoever is at work on it; the record is of a whole run.
if (!wanted.length) {
  writeFileSync(new URL(isLong ? 'latest-long.json' : 'latest.json', import.meta.url), `${JSON.stringify({ measuredOn, machine: machineText(), figures }, null, 2)}\n`)
  if (args.includes('--readme') && !isLong) {
    const readme = new URL('../../README.md', import.meta.url)
    writeFileSync(readme, between(readFileSync(readme, 'utf8'), { from: '<!-- bench table -->', to: '<!-- /bench table -->' }, text))
  }
}
