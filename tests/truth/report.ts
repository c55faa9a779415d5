import { readFileSync, writeFileSync } from 'node:fs'
import { catalogue } from '../../src/science/catalogue.ts'
import { groupedBy, truthCases, type TruthCase } from './cases.ts'
import { isWithin, measure, type Measured, type Miss } from './measure.ts'
import { between, condensedTable, markers, short } from './readme.ts'

/**
 * Prints, as markdown, how far the catalogue lies from published values. Exits 1 when a case misses that is not listed as
 * disagreeing. With --readme the condensed table goes into README.
 */
type Row = { it: TruthCase; measured: Measured }

const rank = (id: string): number => {
  const index = catalogue.findIndex((entry) => entry.id === id)
  return index < 0 ? catalogue.length : index
}

const rows: Row[] = truthCases().map((it) => ({ it, measured: measure(it) }))
const misses = ({ measured }: Row): boolean => measured.mismatches.length > 0 || !measured.numbers.every(isWithin)

const line = (cells: readonly (string | number)[]): string => `| ${cells.join(' | ')} |`

/** One line a field: a calculation with several is as good as its worst. */
const fieldLines = (group: Row[]): string[] => {
  const { it } = group[0]!
  const head = [it.calculation, it.set ?? '', it.source, it.seen]
  const agreeing = group.filter((row) => row.it.disagrees === undefined)
  const byField = groupedBy(agreeing.flatMap(({ measured }) => measured.numbers), ({ field }) => field)
  if (byField.size === 0) return [line([...head, group.length, agreeing.length === 0 ? '(all disagree, see below)' : '(words or refusal)', '', '', ''])]
  return [...byField].map(([field, of]: [string, Miss[]]) => {
    const errors = of.map(({ error }) => error)
    const mean = errors.reduce((sum, error) => sum + error, 0) / errors.length
    return line([...head, errors.length, field, short(mean), short(Math.max(...errors)), short(of[0]!.tolerance ?? NaN)])
  })
}

const groups = [...groupedBy(rows, ({ it }) => `${it.calculation}\u0000${it.set ?? ''}\u0000${it.source}`).values()]
groups.sort((a, b) => rank(a[0]!.it.calculation) - rank(b[0]!.it.calculation))

console.log('| calculation | set | source | seen | values | field | mean error | worst error | tolerance |')
console.log('| --- | --- | --- | --- | ---: | --- | ---: | ---: | ---: |')
for (const group of groups) for (const text of fieldLines(group)) console.log(text)

const disagreeing = rows.filter(({ it }) => it.disagrees !== undefined)
if (disagreeing.length > 0) {
  console.log('\nWhere a published value and the product disagree:\n')
  console.log('| case | calculation | source | off by | reason |')
  console.log('| --- | --- | --- | --- | --- |')
  for (const { it, measured } of disagreeing) {
    const off = [...measured.mismatches, ...measured.numbers.filter((miss) => !isWithin(miss)).map(({ path, error }) => `${path} ${short(error)}`)]
    console.log(line([it.id, it.calculation, it.source, off.join('; '), it.disagrees!]))
  }
}

const unheld = rows.filter((row) => row.it.disagrees === undefined && misses(row))
const fields = rows.reduce((sum, { measured }) => sum + measured.numbers.length, 0)
console.log(`\n${rows.length} cases, ${fields} numbers, ${disagreeing.length} disagreements listed, ${unheld.length} misses.`)
for (const { it } of unheld) console.log(`Missed: ${it.file} ${it.id}`)
if (unheld.length > 0) process.exitCode = 1

if (process.argv.includes('--readme')) {
  const readme = new URL('../../README.md', import.meta.url)
  writeFileSync(readme, between(readFileSync(readme, 'utf8'), markers, condensedTable()))
}
