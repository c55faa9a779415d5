import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { densitiesOf, fieldsOfDensity } from '../../../src/rounds/densities/cgats-densities.ts'
import { readCgats, type CgatsFile } from '../../../src/rounds/densities/cgats-read.ts'
import { writeCgats } from '../../../src/rounds/densities/cgats-write.ts'
import { matchSteps } from '../../../src/rounds/densities/match-steps.ts'

/**
 * Files of our own. What is wanted follows the text form of CGATS.17 as a public encyclopedia of colour science describes it and as Little CMS 2
 * (cmscgats.c, commit a1a25a0, a general-purpose library) reads these very files; the standard itself was not seen. Where that
 * library is more lenient, ours is a decision and says so.
 */
const cg1 = `CGATS.17
ORIGINATOR	"Control desk, shift A"
FILE_DESCRIPTOR	"Control strip N-0412, negative developer"
CREATED	"2026-01-12T06:40:00Z"
INSTRUMENTATION	"transmission densitometer no. 2"
MEASUREMENT_GEOMETRY	"transmission, diffuse, 3 mm aperture"
WEIGHTING_FUNCTION	"name,density;value,ISO visual"
NUMBER_OF_FIELDS	3
BEGIN_DATA_FORMAT
SAMPLE_ID	SAMPLE_NAME	D_VIS
END_DATA_FORMAT
NUMBER_OF_SETS	6
BEGIN_DATA
1	"base and fog"	0.24
2	"step 5"	0.31
3	"step 6"	0.37
4	"step 11"	0.85
5	"step 16"	1.36
6	"step 21"	1.87
END_DATA
`
const cg2 = [
  'CGATS.17', '', "ORIGINATOR 'Shift B'", 'DESCRIPTOR "positive developer, two strips" # two tables follow', 'CREATED "12 January 2026"', 'KEYWORD "STRIP_BATCH"',
  'STRIP_BATCH "P-77"', 'NUMBER_OF_FIELDS 2', 'NUMBER_OF_SETS 4', 'BEGIN_DATA_FORMAT', 'SAMPLE_ID   D_VIS', 'END_DATA_FORMAT', 'BEGIN_DATA', 'A1  0.05   # clear',
  'A2  0.62', 'A3  1.85', 'A4  3.60', 'END_DATA', 'NUMBER_OF_FIELDS 2', 'NUMBER_OF_SETS 3', 'BEGIN_DATA_FORMAT', 'SAMPLE_ID D_VIS', 'END_DATA_FORMAT', 'BEGIN_DATA',
  'B1 0.06 B2 0.60', 'B3 1.81', 'END_DATA', '',
].join('\r\n')

const read = (text: string): CgatsFile => {
  const given = readCgats(text)
  if (!given.ok) throw new Error(JSON.stringify(given.problem))
  return given.file
}
const problem = (text: string) => {
  const given = readCgats(text)
  return given.ok ? undefined : given.problem
}
const steps = ['base and fog', 'step 5', 'step 6', 'step 11', 'step 16', 'step 21']

describe('a densitometer’s text file', () => {
  it('CG-1 is read: one table, six densities by name', () => {
    const file = read(cg1)
    expect(file.notices).toEqual([])
    expect(file.tables.map(({ sets }) => sets.length)).toEqual([6])
    expect(fieldsOfDensity(file.tables[0]!)).toEqual(['D_VIS'])
    const matched = matchSteps(densitiesOf(file.tables[0]!, 'D_VIS'), steps)
    expect(matched).toMatchObject({ ok: true, missing: [], unused: [] })
    expect(matched.ok && Object.entries(matched.byStep).map(([step, { keyed }]) => [step, keyed])).toEqual([
      ['base and fog', '0.24'], ['step 5', '0.31'], ['step 6', '0.37'], ['step 11', '0.85'], ['step 16', '1.36'], ['step 21', '1.87'],
    ])
  })

  it('CG-2 is read: two tables, CR LF, comments, single quotes, a keyword of its own, a set that shares its line', () => {
    const { tables } = read(cg2)
    expect(tables.map(({ sets }) => sets.length)).toEqual([4, 3])
    expect(tables[0]!.preamble.find(({ keyword }) => keyword === 'STRIP_BATCH')?.value).toBe('P-77')
    expect(densitiesOf(tables[1]!, 'D_VIS').map(({ names, cell }) => [names[0], cell.kind === 'density' && cell.value])).toEqual([['B1', 0.06], ['B2', 0.6], ['B3', 1.81]])
  })

  it('CG-3 is refused, with both counts and the line', () => {
    expect(problem(cg1.replace('NUMBER_OF_SETS	6', 'NUMBER_OF_SETS	7'))).toEqual({ code: 'setCount', announced: 7, found: 6, left: 0, line: 19 })
  })

  it('CG-4 is refused: two fields announced, three named', () => {
    expect(problem(cg1.replace('NUMBER_OF_FIELDS	3', 'NUMBER_OF_FIELDS	2'))).toEqual({ code: 'fieldCount', announced: 2, found: 3, line: 13 })
  })

  it('CG-5 without END_DATA is accepted with a notice where the counts hold, and only there (decision)', () => {
    const cut = cg1.replace('END_DATA\n', (found, at: number) => (at > 400 ? '' : found)).replace(/END_DATA\n$/, '')
    expect(read(cut).notices).toEqual([{ code: 'endDataMissing', line: 20 }])
    expect(problem(cut.replace('6	"step 21"	1.87\n', ''))).toMatchObject({ code: 'setCount', announced: 6, found: 5 })
  })

  it('CG-6 0,37 is neither 0 nor 37: it is asked about, and taken once somebody has said so (decision)', () => {
    const table = read(cg1.replace('0.37', '0,37')).tables[0]!
    expect(matchSteps(densitiesOf(table, 'D_VIS'), steps)).toEqual({ ok: false, problem: { code: 'decimalComma', line: 16, text: '0,37', as: '0.37' } })
    const told = matchSteps(densitiesOf(table, 'D_VIS', { decimalComma: true }), steps)
    expect(told.ok && told.byStep['step 6']?.value).toBe(0.37)
  })

  it('CG-7 n/a is a missing reading and not nought (decision)', () => {
    const matched = matchSteps(densitiesOf(read(cg1.replace('0.37', 'n/a')).tables[0]!, 'D_VIS'), steps)
    expect(matched).toMatchObject({ ok: true, missing: ['step 6'] })
  })

  it.each([
    ['a file of another kind', cg1.replace('CGATS.17', 'PK'), { code: 'notCgats', line: 1, found: 'PK' }],
    ['an empty one', '', { code: 'notCgats', line: 1, found: '' }],
    ['a keyword that nobody announced', cg1.replace('CREATED', 'MADE'), { code: 'unknownKeyword', keyword: 'MADE', line: 4 }],
    ['a quote that stays open', cg1.replace('shift A"', 'shift A'), { code: 'openQuote', line: 2 }],
    ['a keyword without its value', cg1.replace('CREATED	"2026-01-12T06:40:00Z"', 'CREATED'), { code: 'noValue', keyword: 'CREATED', line: 4 }],
    ['a text without quotes', cg1.replace('"Control desk, shift A"', 'Control desk'), { code: 'tooManyValues', keyword: 'ORIGINATOR', line: 2 }],
    ['a count that is none', cg1.replace('NUMBER_OF_SETS	6', 'NUMBER_OF_SETS	six'), { code: 'notACount', keyword: 'NUMBER_OF_SETS', found: 'six', line: 12 }],
    ['no count', cg1.replace('NUMBER_OF_SETS	6\n', ''), { code: 'keywordMissing', keyword: 'NUMBER_OF_SETS', line: 12 }],
    ['no format', cg1.replace(/BEGIN_DATA_FORMAT[\s\S]*END_DATA_FORMAT\n/, ''), { code: 'keywordMissing', keyword: 'BEGIN_DATA_FORMAT', line: 10 }],
    ['a field named twice', cg1.replace('SAMPLE_NAME	D_VIS', 'D_VIS	D_VIS'), { code: 'fieldTwice', field: 'D_VIS', line: 10 }],
    ['a format that does not end', cg1.replace('END_DATA_FORMAT\n', ''), { code: 'unended', keyword: 'BEGIN_DATA_FORMAT', line: 12 }],
    ['a head alone', cg1.slice(0, cg1.indexOf('NUMBER_OF_FIELDS')), { code: 'noTable', line: 8 }],
    ['data cut short in a set', cg1.replace('6	"step 21"	1.87', '6	"step 21"'), { code: 'setCount', announced: 6, found: 5, left: 2, line: 19 }],
  ])('refuses %s, with its line', (_, text, wanted) => {
    expect(problem(text)).toMatchObject(wanted)
  })

  it('never throws, whatever is in the file', () => {
    const bits = fc.constantFrom(...cg1.split(/(?<=[\n\t ])/), '"', "'", '#', '\r\n', '0,37', 'END_DATA', '\0')
    fc.assert(fc.property(fc.array(bits, { maxLength: 60 }), (parts) => void readCgats(`CGATS.17\n${parts.join('')}`)))
  })

  it('is written so that it is read back to the same names and digits, whatever the words', () => {
    const name = fc.string({ minLength: 1, maxLength: 20 }).map((text) => text.replaceAll(/[\r\n\t"]+/g, ' ')).filter((text) => text.trim() === text && text !== '')
    const keyed = fc.integer({ min: 0, max: 400 }).map((hundredths) => (hundredths / 100).toFixed(2))
    fc.assert(
      fc.property(fc.array(fc.record({ name, keyed }), { minLength: 1, maxLength: 21 }), name, (rows, words) => {
        const text = writeCgats({ originator: words, descriptor: words, created: '2026-01-12T06:40:00Z', batch: words }, rows)
        const back = read(text)
        expect(densitiesOf(back.tables[0]!, 'D_VIS').map(({ names, cell }) => ({ name: names[0], keyed: cell.kind === 'density' ? cell.keyed : cell.kind }))).toEqual(rows)
        expect(back.tables[0]!.preamble.find(({ keyword }) => keyword === 'STRIP_BATCH')?.value).toBe(words)
      }),
    )
  })
})
