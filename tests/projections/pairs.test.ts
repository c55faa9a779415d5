import { describe, expect, it } from 'vitest'
import { demoLab } from '../../src/demo/lab.ts'
import { pairFindings } from '../../src/projections/pairs.ts'
import { LabLog, minute, smallPlan } from './log.ts'

const plan = smallPlan(demoLab(), 'neg-1-dev-level', 'neg-1-dev-sg', 'neg-1-dev-temp', 'neg-1-dev-controller', 'neg-1-wash-temp')
const start = Date.parse('2026-01-12T06:00:00Z')
const at = (minutes: number): number => start + minutes * minute

const found = (...readings: [check: string, value: number, minutes: number][]): string[] => {
  const log = new LabLog(plan, start)
  for (const [check, value, minutes] of readings) log.reading(check, value, at(minutes))
  return pairFindings(log.lab().state, plan, at(600)).map(({ code, check }) => `${check} ${code}`)
}

// Level and specific gravity as a pair: common practice of the tank room, no source. Aim 1.065 ± 0.003 and the mark ± 10 mm in the demo.
describe('level and specific gravity together', () => {
  it.each([
    ['evaporation: water only', -15, 1.07, 'evaporation'],
    ['loss of bath: leak, carry-out or rate', -15, 1.065, 'lossOfBath'],
    ['bath lost and water come in', -15, 1.06, 'lossAndDilution'],
    ['a mix too strong', 0, 1.07, 'wrongMix'],
    ['a mix too weak, or dilution', 0, 1.06, 'weakMix'],
    ['water coming in', 15, 1.06, 'waterIn'],
    ['fed too fast', 15, 1.065, 'overfed'],
    ['a strong mix fed too fast', 15, 1.07, 'concentrated'],
  ])('tell %s', (_, level, gravity, code) => {
    expect(found(['neg-1-dev-level', level, 10], ['neg-1-dev-sg', gravity, 15])).toEqual([`neg-1-dev-level ${code}`])
  })

  it('say nothing when both are in', () => {
    expect(found(['neg-1-dev-level', -5, 10], ['neg-1-dev-sg', 1.066, 15])).toEqual([])
  })

  it('count from the warning limit, so that evaporation is seen before it is out', () => {
    expect(found(['neg-1-dev-level', -10, 10], ['neg-1-dev-sg', 1.068, 15])).toEqual(['neg-1-dev-level evaporation'])
  })

  it('ask for the other where it was read at another time', () => {
    expect(found(['neg-1-dev-sg', 1.065, 10], ['neg-1-dev-level', -15, 200])).toEqual(['neg-1-dev-level readTheOther'])
    expect(found(['neg-1-dev-level', -15, 10])).toEqual(['neg-1-dev-level readTheOther'])
    expect(found(['neg-1-dev-level', 0, 10])).toEqual([])
  })
})

describe('two that should agree', () => {
  it('controller and thermometer apart by more than the plan allows', () => {
    expect(found(['neg-1-dev-temp', 21, 10], ['neg-1-dev-controller', 21.1, 12])).toEqual([])
    expect(found(['neg-1-dev-temp', 21, 10], ['neg-1-dev-controller', 21.3, 12])).toEqual(['neg-1-dev-controller apart'])
  })

  it('wash and developer temperature more than three degrees apart', () => {
    expect(found(['neg-1-dev-temp', 21, 10], ['neg-1-wash-temp', 18, 12])).toEqual([])
    expect(found(['neg-1-dev-temp', 21, 10], ['neg-1-wash-temp', 17.5, 12])).toEqual(['neg-1-wash-temp apart'])
  })

  it('say by how much', () => {
    const log = new LabLog(plan, start)
    log.reading('neg-1-dev-temp', 21, at(10))
    log.reading('neg-1-dev-controller', 21.3, at(12))
    const [finding] = pairFindings(log.lab().state, plan, at(20))
    expect(finding).toMatchObject({ check: 'neg-1-dev-controller', other: 'neg-1-dev-temp', within: 0.1 })
    expect(finding!.difference).toBeCloseTo(0.3, 9)
  })
})
