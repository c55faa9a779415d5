import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { bathCorrect } from '../../../src/science/bath/correct.ts'
import { evaluate, resultOf } from '../../../src/science/evaluate.ts'
import type { Given } from '../../../src/science/field.ts'

type Inputs = Given<(typeof bathCorrect)['inputs']>

const names = ['metol', 'hydroquinone', 'sodium sulfite', 'borax', 'potassium bromide', 'sodium carbonate']
const decimal = (min: number, max: number, places: number): fc.Arbitrary<number> =>
  fc.integer({ min: Math.round(min * 10 ** places), max: Math.round(max * 10 ** places) }).map((whole) => whole / 10 ** places)

const constituent = (name: string) =>
  fc.record({ aim: decimal(0, 100, 1), share: decimal(0.6, 1.4, 2), tolerance: fc.constantFrom(0, 0, 0.01, 0.05) }).map(({ aim, share, tolerance }) => ({
    name,
    gramsPerLitre: Math.round(aim * share * 1000) / 1000,
    aimGramsPerLitre: aim,
    toleranceGramsPerLitre: Math.round(aim * tolerance * 1000) / 1000,
  }))

const material = (name: string, constituents: readonly string[]) =>
  fc
    .record({
      unit: fc.constantFrom('g' as const, 'L' as const),
      parts: fc.subarray([...constituents], { minLength: 1 }),
      strength: decimal(0.01, 1, 2),
      maxAmount: fc.option(decimal(0, 5000, 0), { nil: undefined }),
      displaced: fc.option(decimal(0, 0.0006, 4), { nil: undefined }),
    })
    .map(({ unit, parts, strength, maxAmount, displaced }) => ({
      name,
      unit,
      provides: Object.fromEntries(parts.map((part, index) => [part, unit === 'g' ? strength / (index + 1) : Math.round(20000 * strength) / 100 / (index + 1)])),
      ...(maxAmount === undefined ? {} : { maxAmount: unit === 'g' ? maxAmount : maxAmount / 100 }),
      ...(unit === 'g' && displaced !== undefined ? { displacesLitresPerUnit: displaced } : {}),
    }))

const bath: fc.Arbitrary<Inputs> = fc.subarray(names, { minLength: 1 }).chain((chosen) =>
  fc
    .record({
      litres: fc.integer({ min: 20, max: 2000 }),
      headroom: fc.constantFrom(0, 0.02, 0.1),
      toAim: fc.constantFrom(0, 0, 0.5),
      maxBleed: fc.option(decimal(0, 0.5, 2), { nil: undefined }),
      constituents: fc.tuple(...chosen.map(constituent)),
      materials: fc.integer({ min: 0, max: 6 }).chain((count) => fc.tuple(...Array.from({ length: count }, (_, index) => material(`material ${index}`, chosen)))),
    })
    .map(({ litres, headroom, toAim, maxBleed, constituents, materials }) => ({
      litres,
      headroomLitres: litres * headroom,
      aimLitres: litres + litres * headroom * toAim,
      ...(maxBleed === undefined ? {} : { maxBleedLitres: litres * maxBleed }),
      constituents,
      materials,
    })),
)

const room = ({ unit, displacesLitresPerUnit }: Inputs['materials'][number]): number => displacesLitresPerUnit ?? (unit === 'L' ? 1 : 0)

describe('every correction, whatever the bath', () => {
  it('closes its mass balance and keeps within the tank, the bleed and the materials', () => {
    fc.assert(
      fc.property(bath, (given) => {
        const { bleedLitres, adds, waterLitres, after, afterLitres, miss, withinTolerance } = resultOf(bathCorrect, given)
        const used = adds.map((add) => ({ ...given.materials.find((it) => it.name === add.material)!, amount: add.amount }))
        for (const [index, { name, gramsPerLitre }] of given.constituents.entries()) {
          const left = gramsPerLitre * (given.litres - bleedLitres)
          const brought = used.reduce((sum, add) => sum + (add.provides[name] ?? 0) * add.amount, 0)
          const found = after[index]!.gramsPerLitre * afterLitres
          expect(Math.abs(found - left - brought)).toBeLessThanOrEqual(1e-12 * Math.max(1, found))
        }
        const litres = given.litres - bleedLitres + used.reduce((sum, add) => sum + room(add) * add.amount, 0) + waterLitres
        expect(Math.abs(litres - afterLitres)).toBeLessThanOrEqual(1e-12 * litres)
        const slack = 1e-9 * given.litres
        expect(afterLitres).toBeLessThanOrEqual(given.litres + given.headroomLitres + slack)
        expect(afterLitres).toBeGreaterThanOrEqual(given.aimLitres! - slack)
        if (waterLitres > slack) expect(afterLitres).toBeCloseTo(given.aimLitres!, 6)
        expect(bleedLitres).toBeGreaterThanOrEqual(0)
        expect(bleedLitres).toBeLessThanOrEqual((given.maxBleedLitres ?? given.litres) + slack)
        for (const { amount, maxAmount } of used) expect(amount).toBeLessThanOrEqual((maxAmount ?? Infinity) * (1 + 1e-9) + 1e-9)
        expect(withinTolerance).toBe(miss === 0)
      }),
      { numRuns: 1500 },
    )
  })

  it('is not made worse by more room, more bleed allowed, or a wider tolerance', () => {
    const eased: ((given: Inputs) => Inputs)[] = [
      (given) => ({ ...given, headroomLitres: given.headroomLitres + given.litres * 0.05 }),
      ({ maxBleedLitres: _, ...given }) => given,
      (given) => ({ ...given, constituents: given.constituents.map((it) => ({ ...it, toleranceGramsPerLitre: it.toleranceGramsPerLitre + 0.01 * it.aimGramsPerLitre })) }),
      (given) => ({ ...given, materials: given.materials.map(({ maxAmount: _, ...it }) => it) }),
    ]
    fc.assert(
      fc.property(bath, fc.constantFrom(...eased), (given, ease) => {
        const before = resultOf(bathCorrect, given)
        const after = resultOf(bathCorrect, ease(given))
        if (before.withinTolerance) {
          expect(after.withinTolerance).toBe(true)
          expect(after.bleedLitres).toBeLessThanOrEqual(before.bleedLitres + 1e-7 * given.litres)
        }
        // Widened tolerances count misses in a larger unit, so the least miss falls there too.
        else expect(after.miss).toBeLessThanOrEqual(before.miss * (1 + 1e-6) + 1e-6)
      }),
      { numRuns: 500 },
    )
  })

  it('grows with the bath: twice the litres take twice the bleed, adds and water', () => {
    fc.assert(
      fc.property(bath, (given) => {
        const once = resultOf(bathCorrect, given)
        const twice = resultOf(bathCorrect, {
          ...given,
          litres: 2 * given.litres,
          headroomLitres: 2 * given.headroomLitres,
          aimLitres: 2 * given.aimLitres!,
          ...(given.maxBleedLitres === undefined ? {} : { maxBleedLitres: 2 * given.maxBleedLitres }),
          materials: given.materials.map((it) => ({ ...it, ...(it.maxAmount === undefined ? {} : { maxAmount: 2 * it.maxAmount }) })),
        })
        expect(twice.bleedLitres).toBeCloseTo(2 * once.bleedLitres, 6)
        expect(twice.miss).toBeCloseTo(once.miss, 6)
        expect(twice.adds.map((add) => add.material)).toEqual(once.adds.map((add) => add.material))
      }),
      { numRuns: 300 },
    )
  })

  it('leaves a bath alone that is within its tolerances', () => {
    fc.assert(
      fc.property(bath, (given) => {
        const right = {
          ...given,
          aimLitres: given.litres,
          constituents: given.constituents.map((it) => ({ ...it, gramsPerLitre: it.aimGramsPerLitre + it.toleranceGramsPerLitre })),
        }
        expect(resultOf(bathCorrect, right)).toMatchObject({ bleedLitres: 0, adds: [], waterLitres: 0, withinTolerance: true, miss: 0, obstacles: [] })
      }),
      { numRuns: 200 },
    )
  })
})

const weak = { name: 'hydroquinone', gramsPerLitre: 4.4, aimGramsPerLitre: 5, toleranceGramsPerLitre: 0.1 }
const strong = { name: 'potassium bromide', gramsPerLitre: 1.3, aimGramsPerLitre: 1, toleranceGramsPerLitre: 0.05 }
const hydroquinone = { name: 'hydroquinone', unit: 'g' as const, provides: { hydroquinone: 1 } }
const replenisher = { name: 'replenisher', unit: 'L' as const, provides: { hydroquinone: 7.5 } }

describe('a bath that cannot come within its tolerances', () => {
  const obstaclesOf = (given: Inputs) => {
    const { withinTolerance, obstacles, miss } = resultOf(bathCorrect, given)
    expect(withinTolerance).toBe(false)
    expect(miss).toBeGreaterThan(0)
    return obstacles
  }

  it('names the constituent that nothing provides', () => {
    const [first] = obstaclesOf({ litres: 600, headroomLitres: 0, constituents: [weak], materials: [] })
    expect(first).toMatchObject({ kind: 'noMaterial', name: 'hydroquinone', missWithout: 0 })
  })

  it('names the bleed when it may not be large enough', () => {
    const obstacles = obstaclesOf({ litres: 600, headroomLitres: 0, maxBleedLitres: 60, constituents: [weak, strong], materials: [hydroquinone] })
    expect(obstacles).toEqual([expect.objectContaining({ kind: 'bleedLimit', name: '', missWithout: 0 })])
  })

  it('names the headroom when a liquid would not fit and nothing may be bled', () => {
    const obstacles = obstaclesOf({ litres: 600, headroomLitres: 10, maxBleedLitres: 0, constituents: [weak], materials: [replenisher] })
    expect(obstacles.map(({ kind }) => kind)).toEqual(expect.arrayContaining(['headroom', 'bleedLimit']))
  })

  it('names the material of which there is too little', () => {
    const obstacles = obstaclesOf({ litres: 600, headroomLitres: 0, maxBleedLitres: 0, constituents: [weak], materials: [{ ...hydroquinone, maxAmount: 100 }] })
    expect(obstacles[0]).toMatchObject({ kind: 'materialLimit', name: 'hydroquinone', missWithout: 0 })
  })

  it('names the constituent whose only material brings too much of another', () => {
    const both = { name: 'premix', unit: 'g' as const, provides: { hydroquinone: 0.5, 'potassium bromide': 0.5 } }
    const obstacles = obstaclesOf({ litres: 600, headroomLitres: 0, maxBleedLitres: 0, constituents: [weak, { ...strong, gramsPerLitre: 1.05 }], materials: [both] })
    expect(obstacles[0]).toMatchObject({ kind: 'noPureMaterial', name: 'hydroquinone', missWithout: 0 })
  })

  it('names both where it takes two to get there', () => {
    // Bleeding alone leaves hydroquinone weak, adding alone leaves bromide strong.
    const obstacles = obstaclesOf({ litres: 600, headroomLitres: 0, maxBleedLitres: 0, constituents: [weak, strong], materials: [{ ...hydroquinone, maxAmount: 0 }] })
    expect(obstacles.map(({ kind }) => kind)).toEqual(expect.arrayContaining(['materialLimit', 'bleedLimit']))
  })

  it('gives the least miss, the dearer weight first', () => {
    const constituents = [weak, { ...strong, weight: 100 }]
    const given = { litres: 600, headroomLitres: 0, constituents, materials: [] }
    // With no material a bleed trades one for the other: the weight decides for bromide.
    const [hq, bromide] = resultOf(bathCorrect, given).after
    expect(bromide!.withinTolerance).toBe(true)
    expect(hq!.withinTolerance).toBe(false)
    expect(resultOf(bathCorrect, { ...given, constituents: [{ ...weak, weight: 100 }, strong] }).after[0]!.gramsPerLitre).toBeCloseTo(4.4, 9)
  })
})

describe('what may be added', () => {
  it('a liquid may take the level into the headroom before anything is bled', () => {
    const given = { litres: 600, headroomLitres: 200, constituents: [weak], materials: [replenisher] }
    const { bleedLitres, adds, waterLitres, afterLitres } = resultOf(bathCorrect, given)
    expect(bleedLitres).toBe(0)
    // (600 × 4.4 + 7.5 a) ÷ (600 + a) = 4.9
    expect(adds[0]!.amount).toBeCloseTo((600 * 0.5) / 2.6, 9)
    expect(waterLitres).toBe(0)
    expect(afterLitres).toBeCloseTo(600 + (600 * 0.5) / 2.6, 9)
  })

  it('with less headroom it bleeds as much as makes room', () => {
    const { bleedLitres, afterLitres } = resultOf(bathCorrect, { litres: 600, headroomLitres: 50, constituents: [weak], materials: [replenisher] })
    expect(bleedLitres).toBeGreaterThan(0)
    expect(afterLitres).toBeCloseTo(650, 9)
  })

  it('water fills an evaporated bath up to its aim level', () => {
    const result = resultOf(bathCorrect, {
      litres: 570,
      headroomLitres: 60,
      aimLitres: 600,
      constituents: [{ name: 'sodium sulfite', gramsPerLitre: 105, aimGramsPerLitre: 100, toleranceGramsPerLitre: 1 }],
      materials: [],
    })
    expect(result).toMatchObject({ bleedLitres: 0, waterLitres: 30, withinTolerance: true })
    expect(result.after[0]!.gramsPerLitre).toBeCloseTo(99.75, 9)
  })

  it.each([
    ['materials[0].provides.metol', { materials: [{ name: 'metol', unit: 'g', provides: { metol: 1 } }] }],
    ['constituents[1].name', { constituents: [weak, weak] }],
    ['materials[1].name', { materials: [hydroquinone, hydroquinone] }],
    ['aimLitres', { aimLitres: 700 }],
    ['litres', { litres: 0 }],
    ['materials[0].provides.hydroquinone', { materials: [{ ...hydroquinone, provides: { hydroquinone: -1 } }] }],
  ] as [string, Partial<Inputs>][])('refuses what does not belong together, naming %s', (field, change) => {
    const given = { litres: 600, headroomLitres: 0, constituents: [weak], materials: [hydroquinone], ...change }
    expect(() => evaluate(bathCorrect, given)).toThrow(expect.objectContaining({ field }))
  })

  it('shows a working whose last lines are the balance of each constituent', () => {
    const { steps, result } = evaluate(bathCorrect, { litres: 600, headroomLitres: 0, constituents: [weak], materials: [hydroquinone] })
    expect(steps.at(-1)).toMatchObject({ says: 'hydroquinone then, aim 5 ± 0.1', value: result.after[0]!.gramsPerLitre, unit: 'g/L' })
  })
})
