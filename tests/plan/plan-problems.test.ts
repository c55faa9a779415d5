import { describe, expect, it } from 'vitest'
import { writtenDemoLab } from '../../src/demo/lab.ts'
import { parsePlan } from '../../src/plan/plan-problems.ts'

/** The demo plan with one thing changed, as a file from outside. */
const changed = (change: (plan: Written) => void): unknown => {
  const plan = JSON.parse(JSON.stringify(writtenDemoLab)) as Written
  change(plan)
  return plan
}
interface Written {
  [key: string]: unknown
  timeZone: string
  people: { id: string; role: string }[]
  shifts: { id: string; from: string }[]
  machines: { id: string; stations: { id: string; bath?: { surfaceSquareMetres?: number; constituents: { substance: string; form?: string }[] } }[] }[]
  checks: { id: string; station: string; kind: string; limits?: Record<string, number>; holdAbove?: number; holdBelow?: number; pairedWith?: string; pairedWithin?: number; method?: string; instrument?: { low: number; high: number } }[]
  materials: { id: string; substance: string; for: string[]; strength: { kind: string; form?: string } }[]
}
const check = (plan: Written, id: string) => plan.checks.find((it) => it.id === id)!
const problemsOf = (raw: unknown): string[] => {
  const parsed = parsePlan(raw)
  return parsed.ok ? [] : parsed.problems.map(({ path, code, detail }) => `${path} ${code} ${detail}`)
}
const at = (id: string): number => writtenDemoLab.checks.findIndex((it) => it.id === id)

describe('a plan from a file', () => {
  it('that holds is taken', () => expect(problemsOf(JSON.parse(JSON.stringify(writtenDemoLab)))).toEqual([]))

  it.each<[string, (plan: Written) => void, string]>([
    ['a check at a station that is not there', (plan) => { check(plan, 'neg-1-fix-ph').station = 'nowhere' }, `checks[${at('neg-1-fix-ph')}].station unknownId nowhere`],
    ['a method that is not there', (plan) => { check(plan, 'neg-1-fix-sulfite').method = 'gone' }, `checks[${at('neg-1-fix-sulfite')}].method unknownId gone`],
    ['two checks of one name', (plan) => { plan.checks[1]!.id = plan.checks[0]!.id }, `checks[1].id repeatedId ${writtenDemoLab.checks[0]!.id}`],
    ['two stations of one name, on two machines', (plan) => { plan.machines[1]!.stations[0]!.id = 'neg-1-feed' }, 'machines[1].stations[0].id repeatedId neg-1-feed'],
    ['an action limit inside the warning limit', (plan) => { check(plan, 'neg-1-fix-ph').limits!['actionHigh'] = 4.6 }, `checks[${at('neg-1-fix-ph')}].limits limitOrder 4 ≤ 4.2 ≤ 4.5 ≤ 4.7 ≤ 4.6`],
    ['a hold limit inside the action limit', (plan) => { check(plan, 'neg-1-fix-ph').holdAbove = 4.75 }, `checks[${at('neg-1-fix-ph')}].holdAbove limitOrder 4.8 ≤ 4.75`],
    ['an aim that its instrument cannot show', (plan) => { check(plan, 'neg-1-fix-ph').instrument!.low = 4.6 }, `checks[${at('neg-1-fix-ph')}].limits.aim aimOutsideLimits 4.5`],
    ['a range upside down', (plan) => { check(plan, 'neg-1-fix-ph').instrument!.low = 20 }, `checks[${at('neg-1-fix-ph')}].instrument rangeOrder 20 to 14`],
    ['a time zone that does not exist', (plan) => { plan.timeZone = 'Europe/Atlantis' }, 'timeZone timeZone Europe/Atlantis'],
    ['a surface in another unit than square metres', (plan) => { plan.machines[0]!.stations[2]!.bath!.surfaceSquareMetres = 80 }, 'machines[0].stations[2].bath.surfaceSquareMetres depth 0.013'],
    ['nobody to sign', (plan) => { plan.people.forEach((it) => { it.role = 'operator' }) }, 'people noSupervisor '],
    ['a reading paired with a look', (plan) => { check(plan, 'neg-1-dev-level').pairedWith = 'neg-1-scratches' }, `checks[${at('neg-1-dev-level')}].pairedWith pair neg-1-scratches`],
    ['a reading paired with itself', (plan) => { check(plan, 'neg-1-dev-level').pairedWith = 'neg-1-dev-level' }, `checks[${at('neg-1-dev-level')}].pairedWith pair neg-1-dev-level`],
    ['two readings compared in two units', (plan) => { check(plan, 'neg-1-dev-controller').pairedWith = 'neg-1-dev-ph' }, `checks[${at('neg-1-dev-controller')}].pairedWith pair neg-1-dev-ph`],
    ['two shifts that begin together', (plan) => { plan.shifts[1]!.from = plan.shifts[0]!.from }, 'shifts[1].from shiftTimes 06:00'],
    ['a bath of something that the calculations do not know', (plan) => { plan.machines[0]!.stations[2]!.bath!.constituents[0]!.substance = 'moonshine' }, 'machines[0].stations[2].bath.constituents[0].substance substance moonshine'],
    ['a salt in a form that it has not', (plan) => { plan.machines[0]!.stations[2]!.bath!.constituents[3]!.form = 'dodecahydrate' }, 'machines[0].stations[2].bath.constituents[3].form substance borax: anhydrous, pentahydrate, decahydrate'],
    ['a dose of something unknown', (plan) => { plan.materials[0]!.substance = 'moonshine' }, 'materials[0].substance substance moonshine'],
  ])('is refused with the place and the reason: %s', (_, change, expected) => expect(problemsOf(changed(change))).toEqual([expected]))

  it('may have a titrant of anything, as long as it goes into no bath', () => {
    expect(problemsOf(changed((plan) => { plan.materials.push({ ...plan.materials[0]!, id: 'ceric', substance: 'cericSulfate', for: [] }) }))).toEqual([])
  })

  it('names every place where the shape is wrong', () => {
    const problems = problemsOf(changed((plan) => { plan['name'] = 7; (plan.checks[3] as unknown as Record<string, unknown>)['surprise'] = true }))
    expect(problems.some((it) => it.startsWith('name shape'))).toBe(true)
    expect(problems.some((it) => it.startsWith('checks[3] shape'))).toBe(true)
  })

  it.each([undefined, null, 7, 'plan', [], {}])('%j is no plan', (raw) => expect(parsePlan(raw).ok).toBe(false))

  it('does not let an id be a word that every object has', () => {
    expect(problemsOf(changed((plan) => { check(plan, 'neg-1-scratches').id = 'constructor' }))[0]).toContain('.id shape')
  })
})
