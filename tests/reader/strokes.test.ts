import { describe, expect, it } from 'vitest'
import { clearOfBorder } from '../../src/reader/clear.ts'
import { groundLevel } from '../../src/reader/line.ts'
import { field, type Box, type Field } from '../../src/reader/picture.ts'
import { strokesOf } from '../../src/reader/strokes.ts'

const [width, height] = [240, 100]

const inked = (boxes: readonly Box[], strength = 1): Field => {
  const out = field(width, height)
  for (const { x, y, ...box } of boxes) for (let row = y; row < y + box.height; row++) for (let column = x; column < x + box.width; column++) out.data[row * width + column] = strength
  return out
}

const at = (image: Field, x: number, y: number): number => image.data[y * image.width + x]!

describe('the strokes of a box', () => {
  it('stay at full strength where a spot of glare as strong as they are goes', () => {
    const shade = inked([{ x: 60, y: 25, width: 8, height: 50 }])
    const [centreX, centreY, reach] = [64, 50, 40]
    for (let y = 0; y < height; y++) for (let x = 0; x < width; x++) shade.data[y * width + x]! += Math.max(0, 1 - Math.hypot(x - centreX, y - centreY) / reach)
    const strokes = strokesOf(shade)
    const full = at(strokes, 64, 60) - groundLevel
    expect(at(strokes, 64, 30) - groundLevel).toBeGreaterThan(0.8 * full)
    for (const x of [50, 78, 85]) expect(at(strokes, x, 50) - groundLevel, `glare beside the stroke at ${x}`).toBeLessThan(0.35 * full)
  })

  it('are told from a dark case, however dark', () => {
    const strokes = strokesOf(inked([{ x: 0, y: 0, width: 60, height }, { x: 120, y: 25, width: 8, height: 50 }]))
    expect(at(strokes, 30, 50)).toBeCloseTo(groundLevel, 5)
    expect(at(strokes, 124, 50)).toBeGreaterThan(1)
  })
})

describe('what hangs on the border of a box', () => {
  const left = (image: Field, x: number, y: number): boolean => at(clearOfBorder(image), x, y) > 0.5

  it('goes when it is a frame, and the figures beside it stay', () => {
    const image = inked([{ x: 0, y: 10, width, height: 3 }, { x: 10, y: 0, width: 3, height }, { x: 60, y: 30, width: 8, height: 50 }])
    expect(left(image, 100, 11)).toBe(false)
    expect(left(image, 11, 50)).toBe(false)
    expect(left(image, 64, 50)).toBe(true)
  })

  it('goes when it is a unit cut off by the side, and stays when it is a figure that touches it', () => {
    expect(left(inked([{ x: 220, y: 60, width: 20, height: 20 }]), 230, 70)).toBe(false)
    expect(left(inked([{ x: 0, y: 20, width: 40, height: 8 }, { x: 0, y: 20, width: 8, height: 60 }]), 20, 24)).toBe(true)
  })
})
