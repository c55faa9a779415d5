import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { strand, type StrandStation } from '../../src/ui/parts/film-strand.ts'

/** The strand runs a little over the edge, so that rows are seen to join. */
const margin = 14
const wet = ['developer', 'stop', 'rinse', 'fixing', 'wash']

const stations = fc.array(
  fc.record({
    kind: fc.constantFrom('feed', 'developer', 'rinse', 'fixing', 'wash', 'squeegee', 'dryer', 'takeOff') as fc.Arbitrary<StrandStation['kind']>,
    pathMetres: fc.double({ min: 0.5, max: 200, noNaN: true }),
  }),
  { minLength: 1, maxLength: 14 },
)

describe('the drawing of the film’s path', () => {
  it('keeps strand, rollers and tanks inside the drawing, whatever the plan', () => {
    fc.assert(
      fc.property(stations, fc.integer({ min: 300, max: 1300 }), (row, width) => {
        const drawing = strand(row, width)
        const numbers = [...drawing.path.matchAll(/[ML](-?[\d.]+) (-?[\d.]+)/g)].map((it) => [Number(it[1]), Number(it[2])] as const)
        for (const [x, y] of numbers) {
          expect(x).toBeGreaterThanOrEqual(-margin)
          expect(x).toBeLessThanOrEqual(width + margin)
          expect(y).toBeGreaterThanOrEqual(0)
          expect(y).toBeLessThanOrEqual(drawing.height)
        }
        for (const { r } of [...drawing.rollers, ...drawing.reels]) expect(r).toBeGreaterThan(0)
        expect(drawing.path).not.toContain('NaN')
      }),
    )
  })

  it('gives every bath a tank, in the order of the path', () => {
    fc.assert(
      fc.property(stations, (row) => {
        const baths = row.flatMap(({ kind }, index) => (wet.includes(kind) ? [index] : []))
        expect(strand(row, 340).tanks.map(({ station }) => station)).toEqual(baths)
      }),
    )
  })
})
