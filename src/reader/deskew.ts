import type { Field } from './picture.ts'

const degree = Math.PI / 180
const furthestDegrees = 14

/**
 * The angle, in radians, by which the line of figures leans: the one whose row sums of ink differ most from row to row, since tops,
 * waists and feet of figures then fall into the same rows. Coarse steps of 2°, then 0.5°. Within ±14°: beyond that a person
 * holding a phone level with a display does not go.
 */
export const skewOf = (ink: Field): number => {
  const points = strongPoints(ink)
  let best = scan(points, ink, 0, furthestDegrees, 2)
  best = scan(points, ink, best, 1.5, 0.5)
  return best * degree
}

interface Points {
  x: Float32Array
  y: Float32Array
  weight: Float32Array
  count: number
}

/** Every second pixel with more ink than ground; a window fades the borders, where bezels and neighbours live. */
const strongPoints = (ink: Field): Points => {
  const { width, height, data } = ink
  const room = Math.ceil(width / 2) * Math.ceil(height / 2)
  const points = { x: new Float32Array(room), y: new Float32Array(room), weight: new Float32Array(room), count: 0 }
  for (let y = 0; y < height; y += 2) {
    for (let x = 0; x < width; x += 2) {
      const value = data[y * width + x]!
      if (value < 0.4) continue
      points.x[points.count] = x - width / 2
      points.y[points.count] = y - height / 2
      points.weight[points.count] = Math.min(value, 2) * Math.sin((Math.PI * (y + 1)) / (height + 1)) * Math.sin((Math.PI * (x + 1)) / (width + 1)) ** 0.5
      points.count++
    }
  }
  return points
}

const scan = (points: Points, ink: Field, centre: number, reach: number, step: number): number => {
  const rows = new Float32Array(Math.ceil(ink.height + ink.width * 0.5) + 8)
  let best = centre
  let bestScore = -1
  for (let degrees = centre - reach; degrees <= centre + reach + 1e-9; degrees += step) {
    rows.fill(0)
    const [cosine, sine] = [Math.cos(degrees * degree), Math.sin(degrees * degree)]
    for (let i = 0; i < points.count; i++) {
      const row = cosine * points.y[i]! - sine * points.x[i]! + rows.length / 2
      const whole = Math.floor(row)
      const part = row - whole
      if (whole < 0 || whole + 1 >= rows.length) continue
      rows[whole]! += points.weight[i]! * (1 - part)
      rows[whole + 1]! += points.weight[i]! * part
    }
    let score = 0
    for (let i = 2; i < rows.length; i++) score += (rows[i]! - rows[i - 2]!) ** 2
    // Level wins a tie: noise alone must not tilt a straight picture.
    score *= 1 - 0.004 * Math.abs(degrees)
    if (score > bestScore) {
      bestScore = score
      best = degrees
    }
  }
  return best
}
