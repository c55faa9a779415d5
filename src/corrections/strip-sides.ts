import { figureLimits } from '../plan/judge-strip.ts'
import { judge } from '../plan/limits.ts'
import type { Side } from './row.ts'
import type { Situation } from './situation.ts'

/** The three figures that the trade's table speaks of, by the words that laboratories use for them. */
const words: Readonly<Record<'fog' | 'speed' | 'gamma', RegExp>> = { fog: /fog|d-?min/i, speed: /speed/i, gamma: /gamma|contrast|gradient/i }

/** A speed point stated as the log exposure that gives a density falls when the film gets faster. */
const fallsWithSpeed = /log/i

/** Where fog, speed and gamma of the strip lie against their limits; speed is high where the same exposure gives more density. */
export const stripSides = ({ check, known }: Situation): { readonly [figure: string]: Side | 'in' } => {
  if (check.kind !== 'strip' || !known.stripFigures) return {}
  const sides: { [figure: string]: Side | 'in' } = {}
  for (const [name, pattern] of Object.entries(words)) {
    const figure = check.figures.find((it) => pattern.test(it.figure))
    const value = figure && known.stripFigures[figure.figure]
    if (!figure || value === undefined) continue
    const { verdict, side } = judge(figureLimits(figure, known.stripAims), value)
    const flipped = name === 'speed' && fallsWithSpeed.test(figure.unit) && side !== 'onAim' ? (side === 'high' ? 'low' : 'high') : side
    sides[name] = verdict === 'IN' || flipped === 'onAim' ? 'in' : flipped
  }
  return sides
}

/** A figure of the strip with its limits, by the trade's word. */
export const stripFigure = ({ check, known }: Situation, name: keyof typeof words): { value: number; aim: number } | undefined => {
  if (check.kind !== 'strip') return undefined
  const figure = check.figures.find((it) => words[name].test(it.figure))
  const value = figure && known.stripFigures?.[figure.figure]
  return figure && value !== undefined ? { value, aim: figureLimits(figure, known.stripAims).aim } : undefined
}
