import { describe, expect, it } from 'vitest'
import { demoLab, writtenDemoLab } from '../../src/demo/lab.ts'
import { judge } from '../../src/plan/limits.ts'
import { parsePlan } from '../../src/plan/plan-problems.ts'
import { canonical } from '../../src/record/canonical.ts'
import { largestPush } from '../../src/wire/largest.ts'
import { factsOf, substanceKeys, type Substance } from '../../src/science/substances.ts'

describe('the demo laboratory', () => {
  const plan = demoLab()

  it('has a plan in which nothing is wrong', () => {
    expect(parsePlan(writtenDemoLab)).toEqual({ ok: true, plan })
  })

  // A plan may be four times as large; the envelope takes less than a kilobyte.
  it('fits into an ordinary entry', () => {
    expect(new TextEncoder().encode(canonical(plan)).length).toBeLessThan(largestPush.bytesPerEntry - 1000)
  })

  it('has a negative and a positive machine, two operators, one supervisor, three shifts', () => {
    expect(plan.machines.map(({ stock }) => stock)).toEqual(['negative', 'positive'])
    expect(plan.people.map(({ role }) => role).sort()).toEqual(['operator', 'operator', 'supervisor'])
    expect(plan.shifts).toHaveLength(3)
    expect(plan.demo).toBe(true)
  })

  // 1 ft = 0.3048 m exactly (international foot, 1959).
  it('runs at 100 and 175 feet a minute', () => {
    expect(plan.machines.map(({ aimMetresPerMinute }) => aimMetresPerMinute / 0.3048)).toEqual([expect.closeTo(100, 9), expect.closeTo(175, 9)])
  })

  it('marks every aim as a starting value and says where it comes from', () => {
    for (const { setBy, id } of plan.checks) {
      expect(setBy.kind, id).toBe('startingValue')
      expect(setBy.kind === 'startingValue' && setBy.source.length, id).toBeGreaterThan(5)
    }
  })

  it('names bath constituents and materials as the calculations do', () => {
    const named = [
      ...plan.materials.map(({ substance, strength }) => ({ substance, form: strength.kind === 'solid' ? strength.form : undefined })),
      ...plan.machines.flatMap(({ stations }) => stations.flatMap(({ bath }) => bath?.constituents ?? [])),
    ]
    for (const { substance, form } of named) {
      expect(substanceKeys).toContain(substance)
      if (form) expect(factsOf(substance as Substance).forms, substance).toContain(form)
    }
  })

  it('calls a fixing bath at pH 4.92 out of its action limits, and 4.50 in', () => {
    const check = plan.checks.find(({ id }) => id === 'neg-1-fix-ph')
    if (check?.kind !== 'reading') throw new Error('no reading')
    expect(judge(check.limits, 4.92)).toEqual({ verdict: 'ACT', side: 'high' })
    expect(judge(check.limits, 4.5).verdict).toBe('IN')
    // 4.0 to 4.8: from memory, as the demo says.
    expect(judge(check.limits, 4.8).verdict).toBe('WARN')
    expect(judge(check.limits, 3.99)).toEqual({ verdict: 'ACT', side: 'low' })
  })

  it.each([
    ['gas and vapour alarms', 'room', /[Gg]as alarm/], ['water hardness', 'plant', /hardness/], ['iron', 'plant', /[Ii]ron/], ['assay and expiry of lots', 'mixing', /[Ll]ots/],
    ['titration blanks', 'instruments', /blanks/], ['sensitometer lamp', 'instruments', /[Ss]ensitometer/], ['densitometer plaque', 'instruments', /plaque/],
    ['filter pressure', 'developer', /[Ff]ilter/], ['pH at the drain', 'effluent', /^pH/], ['silver at the drain', 'effluent', /[Ss]ilver/],
    ['standby', 'developer', /[Ss]tanding by/], ['shut-down', 'drive', /[Ss]hut down/], ['start-up alarms', 'elevator', /[Aa]larms/], ['change-over', 'feed', /can/],
  ])('has a check for %s', (_, kind, name) => {
    const stations = new Set<string>(plan.machines.flatMap((machine) => machine.stations.filter((it) => it.kind === kind).map(({ id }) => id)))
    expect(plan.checks.filter((check) => stations.has(check.station) && name.test(check.name))).not.toEqual([])
  })

  it('asks for sulfite in every first fixing bath once a day, so that acid can be offered', () => {
    for (const id of ['neg-1-fix-sulfite', 'pos-2-fix-sulfite'])
      expect(plan.checks.find((check) => check.id === id)?.schedule).toEqual({ kind: 'interval', minutes: 1440, graceMinutes: 120 })
  })

  it('holds the machine at once for mechanical faults and a milky fixing bath, as the trade does', () => {
    const holding = plan.checks.filter(({ immediateHold }) => immediateHold).map(({ id }) => id)
    expect(holding).toEqual([
      'neg-1-can', 'neg-1-alarms', 'neg-1-tension', 'neg-1-dev-surface', 'neg-1-fix-clear', 'neg-1-air', 'neg-1-scratches',
      'pos-2-dev-surface', 'pos-2-fix-clear', 'pos-2-scratches', 'silver-plate',
    ])
  })
})
