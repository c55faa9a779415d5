import { describe, expect, it } from 'vitest'
import { byTimeOrHeat } from '../../src/corrections/causes/by-time-or-heat.ts'
import { courseOf, signsOf } from '../../src/corrections/causes/signs.ts'
import { stripCauses, type StripAsked } from '../../src/corrections/causes/strip-causes.ts'
import { suspects } from '../../src/corrections/causes/suspects.ts'
import type { StripCheck } from '../../src/plan/check.ts'
import { Bench } from './kit.ts'

const stripOf = (bench: Bench): StripCheck => bench.plan.checks.find((it): it is StripCheck => it.id === 'neg-1-strip')!
/** Off by so many hundredths from the aims 0.25, −2.10, 0.65; speed in log exposure, which falls as the film gets faster. */
const off = ({ fog = 0, speed = 0, gamma = 0 }) => ({ baseFog: 0.25 + fog / 100, speed: -2.1 - speed / 100, gamma: 0.65 + gamma / 100 })

const causes = (bench: Bench, figures: Record<string, number>, more: Partial<StripAsked> = {}) => {
  bench.strip('neg-1-strip', figures)
  return stripCauses(bench.state, bench.plan, { check: stripOf(bench), time: bench.now, figures, isRepeat: true, ...more }, bench.now)
}
const codes = (found: ReturnType<typeof causes>): string[] => found.causes.map(({ code }) => code)
/** The instrument is proved, so that it does not stand first. */
const proved = (): Bench => {
  const bench = new Bench()
  bench.read('densitometer', 1.5)
  return bench
}

// What a deviation points to: signs as Film Archives On-Line sect. 10, US Navy Photography (Advanced) 14208, US Army SS0509 and makers’ tables give them.
describe('what a strip that is off points to', () => {
  it('density and contrast up with a warm developer: the temperature first, with the reading, and one tap to read it', () => {
    const bench = proved()
    bench.read('neg-1-dev-temp', 21.4)
    const found = causes(bench, off({ fog: 2, speed: 5, gamma: 3 }))
    expect(found.signs).toEqual({ fog: 'up', speed: 'up', gamma: 'up' })
    expect(found.causes[0]).toMatchObject({ code: 'tooWarm', settles: 'neg-1-dev-temp' })
    expect(found.causes[0]!.reasons[0]).toMatchObject({ code: 'readingOut', facts: { keyed: '21.4', aim: 21 } })
  })

  it('the same strip with the temperature on aim and the machine slow: the speed', () => {
    const bench = proved()
    bench.read('neg-1-dev-temp', 21)
    bench.read('neg-1-speed', 30.1)
    expect(codes(causes(bench, off({ fog: 2, speed: 5, gamma: 3 })))[0]).toBe('tooSlow')
  })

  it('density and contrast down never points to a warm developer or a slow machine', () => {
    const found = codes(causes(proved(), off({ speed: -5, gamma: -3 })))
    expect(found).not.toContain('tooWarm')
    expect(found).not.toContain('tooSlow')
    expect(found.slice(0, 2).sort()).toEqual(['tooCold', 'tooFast'])
  })

  it('speed down and fog down with contrast kept, bromide titrated high: bromide', () => {
    const bench = proved()
    bench.read('neg-1-dev-bromide', 0.85)
    expect(causes(bench, off({ fog: -2, speed: -5 })).causes[0]).toMatchObject({ code: 'bromideHigh', settles: 'neg-1-dev-bromide' })
  })

  it('contrast down with low gravity: diluted', () => {
    const bench = proved()
    bench.read('neg-1-dev-sg', 1.061)
    expect(codes(causes(bench, off({ gamma: -3 })))[0]).toBe('diluted')
  })

  it('fog alone up: stock or light, and no bath reading is blamed', () => {
    expect(codes(causes(proved(), off({ fog: 3 })))[0]).toBe('lightOrOldStock')
  })

  it('all down with pH low: acid carried in, or alkali short', () => {
    const bench = proved()
    for (const [check, value] of [['neg-1-dev-temp', 21], ['neg-1-speed', 30.48], ['neg-1-dev-ph', 8.5]] as const) bench.read(check, value)
    expect(codes(causes(bench, off({ fog: -2, speed: -5, gamma: -3 })))[0]).toBe('phLow')
  })

  it('streaks and stains are asked of the eye and come first when they are seen', () => {
    const found = causes(proved(), off({}), { seen: ['streaks'] })
    expect(codes(found)[0]).toBe('circulation')
    expect(found.causes[0]!.settles).toBe('neg-1-dev-flow')
    expect(codes(causes(proved(), off({}), { seen: ['brownStain'] }))[0]).toBe('weakFixing')
  })

  it('the instrument first where it was not proved, then the second strip', () => {
    const found = causes(new Bench(), off({ speed: 5, gamma: 3 }), { isRepeat: false })
    expect(codes(found).slice(0, 2)).toEqual(['densitometer', 'repeatStrip'])
    expect(found.causes.map(({ settles }) => settles).slice(0, 2)).toEqual(['densitometer', 'neg-1-strip'])
  })

  it('a jump with a new batch of strips: the batch', () => {
    const bench = proved()
    bench.enter('strip', { check: stripOf(bench).id, plan: bench.state.plans.revisions.at(-1)!.id, densities: {}, figures: off({}), verdict: 'IN', batch: 'A' })
    const found = causes(bench.wait(120), off({ speed: 5, gamma: 3 }), { batch: 'B' })
    expect(found.course).toBe('jump')
    expect(codes(found)).toContain('newBatch')
  })

  it('what was not read lately is what settles it', () => {
    const found = causes(proved(), off({ speed: -5, gamma: -3 }))
    const cold = found.causes.find(({ code }) => code === 'tooCold')!
    expect(cold.settles).toBe('neg-1-dev-temp')
    expect(cold.reasons[0]!.code).toBe('neverRead')
  })

  it('on its aims it points to nothing', () => {
    expect(causes(proved(), off({})).causes).toEqual([])
    expect(signsOf(stripOf(proved()), off({ speed: 1 }))).toEqual({ fog: 'same', speed: 'same', gamma: 'same' })
  })

  it('every suspect has a source and shows itself somehow', () => {
    for (const { code, source, signs, seen } of suspects) {
      expect(source.length, code).toBeGreaterThan(8)
      expect(signs ?? seen, code).toBeDefined()
    }
  })
})

describe('how it came', () => {
  // K-06: five one way is a trend even inside the limits (US Army SS0513).
  it('K-06: 0.66 0.655 0.65 0.645 0.64 is a drift', () => {
    expect(courseOf([0.66, 0.655, 0.65, 0.645, 0.64], 0.65)).toBe('drift')
  })
  it('one strip far from the one before is a jump, and a first strip says nothing', () => {
    expect(courseOf([0.65, 0.65, 0.69], 0.65)).toBe('jump')
    expect(courseOf([0.69], 0.65)).toBe('unknown')
    expect(courseOf([0.68, 0.69], 0.65)).toBe('unknown')
  })
})

describe('gamma brought back by time or heat', () => {
  it('speed by the law of the film, temperature by its coefficient, and what goes with them', () => {
    const bench = new Bench((plan) => {
      const check = plan.checks.find(({ id }) => id === 'neg-1-strip') as StripCheck
      check.law = { gammaInfinity: 1.25, ratePerMinute: 0.127706, coefficientPerTenCelsius: 2 }
    })
    const answer = byTimeOrHeat(bench.state, bench.plan, { check: stripOf(bench), figures: { gamma: 0.62 } }, bench.now)
    if (!answer.ok) throw new Error(answer.code)
    const { metresPerMinute, times, celsius } = answer.value
    // 198.12 m at 30.48 m/min are 6.5 min; ln(1 − 0.62/1.25) − ln(1 − 0.65/1.25) = 0.048790 over 0.127706 is 0.38205 min more, by hand.
    expect(metresPerMinute.to).toBeCloseTo(198.12 / (6.5 + 0.38205), 3)
    expect(celsius).toBeCloseTo((10 * Math.log(6.88205 / 6.5)) / Math.log(2), 3)
    expect(times.map(({ kind }) => kind)).toEqual(['developer', 'fixing', 'fixing', 'wash', 'dryer'])
  })

  it('is refused where the plan does not know the law, or gamma lies beyond it', () => {
    const bench = new Bench((plan) => void delete (plan.checks.find(({ id }) => id === 'neg-1-strip') as StripCheck).law)
    expect(byTimeOrHeat(bench.state, bench.plan, { check: stripOf(bench), figures: { gamma: 0.62 } }, bench.now)).toEqual({ ok: false, code: 'lawUnknown' })
    const known = new Bench()
    expect(byTimeOrHeat(known.state, known.plan, { check: stripOf(known), figures: { gamma: 1.2 } }, known.now)).toEqual({ ok: false, code: 'offTheCurve' })
  })
})
