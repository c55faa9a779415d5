import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { optimum, type Row, type Sum } from '../../../src/science/bath/optimum.ts'

const value = (sum: Sum, answer: Sum): number => Object.entries(sum).reduce((total, [name, coefficient]) => total + coefficient * answer[name]!, 0)

const meets = (rows: readonly Row[], answer: Sum): boolean =>
  rows.every(({ sum, atLeast = -Infinity, atMost = Infinity }) => value(sum, answer) >= atLeast - 1e-9 && value(sum, answer) <= atMost + 1e-9)

/** All corners of a program in two variables: every pair of lines, axes among them, that meets within the rows. */
const corners = (rows: readonly Row[]): Sum[] => {
  const lines = [
    ...rows.flatMap(({ sum, atLeast, atMost }) => [atLeast, atMost].filter((limit) => limit !== undefined).map((limit) => [sum['x']!, sum['y']!, limit] as const)),
    [1, 0, 0] as const,
    [0, 1, 0] as const,
  ]
  return lines.flatMap(([a, b, e], index) =>
    lines.slice(index + 1).flatMap(([c, d, f]) => {
      const determinant = a * d - b * c
      if (determinant === 0) return []
      const corner = { x: (e * d - b * f) / determinant, y: (a * f - e * c) / determinant }
      return corner.x >= -1e-9 && corner.y >= -1e-9 && meets(rows, corner) ? [corner] : []
    }),
  )
}

const coefficient = fc.integer({ min: -4, max: 4 })
const row = fc.record({ x: coefficient, y: coefficient, limit: fc.integer({ min: -6, max: 6 }) }).map(({ x, y, limit }): Row => ({ sum: { x, y }, atMost: limit }))
// A box keeps every objective bounded.
const program = fc.array(row, { maxLength: 8 }).map((rows): Row[] => [...rows, { sum: { x: 1, y: 0 }, atMost: 10 }, { sum: { x: 0, y: 1 }, atMost: 10 }])
const objective = fc.record({ x: coefficient, y: coefficient })

describe('the least of a linear program', () => {
  it('is that of the best corner, and where there is no corner there is no answer', () => {
    fc.assert(
      fc.property(program, objective, (rows, sum) => {
        const found = optimum([sum], rows)
        const best = Math.min(...corners(rows).map((corner) => value(sum, corner)))
        if (!found) expect(best).toBe(Infinity)
        else {
          expect(meets(rows, found)).toBe(true)
          expect(value(sum, found)).toBeCloseTo(best, 9)
        }
      }),
      { numRuns: 2000 },
    )
  })

  it('a second objective is least among the answers that keep the first', () => {
    fc.assert(
      fc.property(program, objective, objective, (rows, first, second) => {
        const found = optimum([first, second], rows)
        if (!found) return
        const all = corners(rows)
        const best = Math.min(...all.map((corner) => value(first, corner)))
        const next = Math.min(...all.filter((corner) => value(first, corner) < best + 1e-9).map((corner) => value(second, corner)))
        expect(value(first, found)).toBeCloseTo(best, 9)
        expect(value(second, found)).toBeCloseTo(next, 9)
      }),
      { numRuns: 2000 },
    )
  })

  it('does not cycle where the textbook example does', () => {
    // Beale 1955, as textbooks print it: the simplex method with the steepest column cycles. Least value −1/20.
    const rows: Row[] = [
      { sum: { x1: 1 / 4, x2: -60, x3: -1 / 25, x4: 9 }, atMost: 0 },
      { sum: { x1: 1 / 2, x2: -90, x3: -1 / 50, x4: 3 }, atMost: 0 },
      { sum: { x3: 1 }, atMost: 1 },
    ]
    const sum = { x1: -3 / 4, x2: 150, x3: -1 / 50, x4: 6 }
    expect(value(sum, optimum([sum], rows)!)).toBeCloseTo(-1 / 20, 12)
  })

  it('says when an objective has no least value', () => {
    expect(() => optimum([{ x: -1 }], [{ sum: { x: -1 }, atMost: 1 }])).toThrow('without a least value')
  })
})
