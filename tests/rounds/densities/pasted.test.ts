import { describe, expect, it } from 'vitest'
import { matchSteps } from '../../../src/rounds/densities/match-steps.ts'
import { readPasted } from '../../../src/rounds/densities/pasted.ts'

const told = (text: string, decimalComma = false) => {
  const given = readPasted(text, { decimalComma })
  return given.ok ? given.rows.map(({ names, cell }) => [...names, cell.kind === 'density' ? cell.value : cell.kind]) : given.problem
}

describe('densities that are pasted', () => {
  it.each([
    ['one to a line', '0.24\n0.31\n.37\n', [[0.24], [0.31], [0.37]]],
    ['side by side', '0.24 0.31  0.37', [[0.24], [0.31], [0.37]]],
    ['a spreadsheet with a heading', 'Step\tDensity\r\n1\t0.24\r\n2\t0.31', [['1', 0.24], ['2', 0.31]]],
    ['RFC 4180 with quotes', 'step,density\r\n"base, fog",0.24\r\n"step 5",0.31\r\n', [['base, fog', 0.24], ['step 5', 0.31]]],
    ['names with blanks', 'step 5 0.31\nstep 6 0.37', [['step 5', 0.31], ['step 6', 0.37]]],
    ['a gap', '1\t0.24\n2\tn/a\n3\t', [['1', 0.24], ['2', 'missing'], ['3', 'missing']]],
    ['decimal commas', '0,24\n0,31', [['decimalComma'], ['decimalComma']]],
    ['decimal commas in columns', '1;0,24\n2;0,31', [['1', 'decimalComma'], ['2', 'decimalComma']]],
    ['a slipped point', '0.24 24.5 0.31', [[0.24], ['notADensity'], [0.31]]],
  ])('%s', (_, text, rows) => {
    expect(told(text)).toEqual(rows)
  })

  it('decimal commas are taken once somebody has said that they are', () => {
    expect(told('1;0,24\n2;0,31', true)).toEqual([['1', 0.24], ['2', 0.31]])
    expect(told('0,24 0,31 0,37', true)).toEqual([[0.24], [0.31], [0.37]])
  })

  it('three cells in a line are refused with the line, not guessed', () => {
    expect(told('1,0.24\n2,0,31')).toEqual({ code: 'cells', found: 3, line: 2 })
    expect(told('1\t0.24\n"2\t0.31')).toEqual({ code: 'openQuote', line: 2 })
  })
})

describe('laying densities on the steps of the plan', () => {
  const rows = (text: string) => {
    const given = readPasted(text)
    if (!given.ok) throw new Error(given.problem.code)
    return given.rows
  }
  const keyed = (text: string, steps: string[]) => {
    const matched = matchSteps(rows(text), steps)
    return matched.ok ? Object.fromEntries(Object.entries(matched.byStep).map(([step, { value }]) => [step, value])) : matched.problem
  }

  it('goes by name where names are known, whatever the order', () => {
    expect(keyed('step 3\t0.37\nStep 01\t0.24\n2\t0.31', ['1', '2', '3'])).toEqual({ '1': 0.24, '2': 0.31, '3': 0.37 })
  })
  it('goes by order only where there are as many densities as steps', () => {
    expect(keyed('0.24\n0.31\n0.37', ['1', '2', '3'])).toEqual({ '1': 0.24, '2': 0.31, '3': 0.37 })
    expect(keyed('0.24\n0.31', ['1', '2', '3'])).toEqual({ code: 'count', found: 2, steps: 3 })
  })
  it('refuses a step that stands twice', () => {
    expect(keyed('1\t0.24\n1\t0.25', ['1', '2'])).toEqual({ code: 'stepTwice', line: 2, step: '1' })
  })
})
