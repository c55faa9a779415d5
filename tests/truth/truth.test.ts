import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { catalogue } from '../../src/science/catalogue.ts'
import { groupedBy, truthCases } from './cases.ts'
import { isWithin, measure, tableKey } from './measure.ts'
import { between, condensedTable, markers } from './readme.ts'
import { tolerances } from './tolerances.ts'

const cases = truthCases()

const found = ({ numbers, mismatches }: ReturnType<typeof measure>): string[] => [
  ...mismatches,
  ...numbers.filter((miss) => !isWithin(miss)).map(({ path, error, tolerance }) => `${path} is off by ${error}, tolerance ${tolerance}`),
]

describe.each([...groupedBy(cases, ({ file }) => file)])('%s', (_, ofFile) => {
  it.each(ofFile.map((each) => [each.id, each] as const))('%s', (_, each) => {
    const measured = measure(each)
    for (const { path, tolerance } of measured.numbers) expect(tolerance, `a tolerance for ${path} in ${tableKey(each)}`).toBeDefined()
    if (each.disagrees === undefined) expect(found(measured)).toEqual([])
    else expect(found(measured), 'is marked as disagreeing, but agrees').not.toEqual([])
  })
})

describe('the truth', () => {
  it('names each case once', () => {
    const ids = cases.map(({ id }) => id)
    expect(ids.filter((id, index) => ids.indexOf(id) !== index)).toEqual([])
  })

  it('has a tolerance only where a case uses it', () => {
    const used = new Set(cases.flatMap((each) => measure(each).numbers.map(({ field }) => `${tableKey(each)} · ${field}`)))
    const uses = [...used]
    const listed = Object.entries(tolerances).flatMap(([key, fields]) => Object.keys(fields).map((field) => `${key} · ${field}`))
    expect(listed.filter((name) => !uses.some((use) => use === name || use.startsWith(`${name}.`)))).toEqual([])
  })

  it('holds every calculation of the catalogue against at least one value', () => {
    const held = new Set(cases.map(({ calculation }) => calculation))
    expect(catalogue.map(({ id }) => id).filter((id) => !held.has(id))).toEqual([])
  })

  it('stands in README as it is today (npm run truth -- --readme writes it)', () => {
    const readme = readFileSync(new URL('../../README.md', import.meta.url), 'utf8')
    expect(readme).toBe(between(readme, markers, condensedTable()))
  })
})
