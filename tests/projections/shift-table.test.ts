import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { demoLab } from '../../src/demo/lab.ts'
import type { StationId } from '../../src/plan/ids.ts'
import { shiftAt } from '../../src/plan/shift-time.ts'
import { csvText } from '../../src/projections/csv.ts'
import { linesOfShift } from '../../src/projections/shift-lines.ts'
import { shiftTable } from '../../src/projections/shift-table.ts'
import { hour, LabLog, minute, smallPlan } from './log.ts'

/** RFC 4180, section 2, as a reader: apart from the writer. */
const read = (text: string): string[][] => {
  const rows: string[][] = [[]]
  let cell = ''
  let quoted = false
  for (let at = 0; at < text.length; at++) {
    const letter = text[at]!
    if (quoted) {
      if (letter === '"' && text[at + 1] === '"') cell += text[++at]
      else if (letter === '"') quoted = false
      else cell += letter
    } else if (letter === '"') quoted = true
    else if (letter === ',' || letter === '\r') {
      rows.at(-1)!.push(cell)
      cell = ''
      if (letter === '\r') {
        rows.push([])
        at++
      }
    } else cell += letter
  }
  return rows.slice(0, -1)
}

describe('comma-separated values', () => {
  // The examples of RFC 4180, section 2, rules 6 and 7.
  it('are quoted as the standard has it', () => {
    expect(csvText([['aaa', 'b\r\nbb', 'ccc'], ['aaa', 'b"bb', 'ccc']])).toBe('aaa,"b\r\nbb",ccc\r\naaa,"b""bb",ccc\r\n')
  })

  it('come back as they went, whatever is in them', () => {
    const text = fc.string().filter((it) => !/^[=+\-@\t\r]/.test(it))
    fc.assert(fc.property(fc.array(fc.array(text, { minLength: 2, maxLength: 4 }), { minLength: 1, maxLength: 4 }), (rows) => {
      expect(read(csvText(rows))).toEqual(rows)
    }))
  })

  it('run nothing in a spreadsheet, and leave numbers alone', () => {
    expect(csvText([['=HYPERLINK("x")', '-0.3', '+4', '@x', -0.3]])).toBe('"\'=HYPERLINK(""x"")",-0.3,+4,\'@x,-0.3\r\n')
  })
})

describe('the table of a shift', () => {
  const plan = smallPlan(demoLab(), 'neg-1-fix-ph', 'neg-1-scratches')
  const start = Date.parse('2026-01-12T06:00:00Z')
  const log = new LabLog(plan, start - hour)
  const reading = log.reading('neg-1-fix-ph', 4.92, start + 2 * minute)
  log.acid(reading, start + 10 * minute, { lot: 'A 17' })
  const wrong = log.say({ kind: 'note', data: { text: '=1+1, "so"', about: 'incident' }, at: start + 20 * minute })
  log.say({ kind: 'withdraw', data: { ref: wrong, why: 'not here' }, at: start + 21 * minute })
  const span = shiftAt(plan, start)
  const table = read(shiftTable(linesOfShift(log.lab().ledger, span), { plan, late: new Set([wrong]), signatureOf: (id) => (id === reading ? '-sig_' : undefined) }))
  const [columns, ...rows] = table
  const cell = (row: number, column: string): string => rows[row]![columns!.indexOf(column)]!

  it('has a row for each entry, with time in the laboratory’s zone, unit by UCUM, hash and signature', () => {
    expect(rows.map((row) => row[columns!.indexOf('kind')])).toEqual(['reading', 'add', 'note', 'withdraw'])
    expect(cell(0, 'time')).toBe(Temporal.Instant.fromEpochMilliseconds(start + 2 * minute).toZonedDateTimeISO(plan.timeZone).toString({ timeZoneName: 'never', fractionalSecondDigits: 3 }))
    expect([cell(0, 'keyed'), cell(0, 'unit'), cell(0, 'verdict'), cell(0, 'signature')]).toEqual(['4.92', '[pH]', 'ACT', '-sig_'])
    expect(cell(0, 'hash')).toMatch(/^[0-9a-f]{64}$/)
    expect([cell(1, 'value'), cell(1, 'unit'), cell(1, 'lot')]).toEqual(['2350', 'mL', 'A 17'])
  })

  it('names what went into a batch as the drum does', () => {
    const mixing = new LabLog(plan, start - hour)
    const mix = mixing.say({ kind: 'mix', data: { plan: mixing.planId, formula: 'negative-developer' as never, station: 'neg-1-dev' as StationId, litres: 100 }, at: start + minute })
    for (const [order, substance] of ['sodiumSulfite', 'ownSalt'].entries()) mixing.say({ kind: 'mixStep', data: { mix, order, substance, amount: 7000, unit: 'g' }, at: start + (2 + order) * minute })
    const [columns, ...rows] = read(shiftTable(linesOfShift(mixing.lab().ledger, span), { plan, late: new Set(), signatureOf: () => undefined }))
    expect(rows.filter((row) => row[columns!.indexOf('kind')] === 'mixStep').map((row) => row[columns!.indexOf('what')])).toEqual(['sodium sulfite', 'ownSalt'])
  })

  it('says what was withdrawn and what came late', () => {
    expect([cell(2, 'state'), cell(2, 'late'), cell(2, 'text')]).toEqual(['withdrawn', 'yes', '\'=1+1, "so"'])
    expect([cell(3, 'state'), cell(3, 'late')]).toEqual(['stands', 'no'])
  })
})
