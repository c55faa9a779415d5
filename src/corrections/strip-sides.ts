import { judge } from '../plan/limits.ts'
import type { Side } from './row.ts'
import type { Situation } from './situation.ts'

/** The three figures that the trade's table speaks of, by the words that laboratories use for them. */
const words: Readonly<Record<'fog' | 'speed' | 'gamma', RegExp>> = { fog: /fog|d-?min/i, speed: /speed/i, gamma: /gamma|contrast|gradient/i }

/**
 * Where fog, speed and gamma of the strip lie against their limits. Speed is taken as it is plotted: a density or a log exposure that
 * stands for more density when it is higher.
 */
export const stripSides = ({ check, known }: Situation): { readonly [figure: string]: Side | 'in' } => {
  if (check.kind !== 'strip' || !known.stripFigures) return {}
  const sides: { [figure: string]: Side | 'in' } = {}
  for (const [name, pattern] of Object.entries(words)) {
    const figure = check.figures.find((it) => pattern.test(it.figure))
    const value = figure && known.stripFigures[figure.figure]
    if (!figure || value === undefined) continue
    const { verdict, side } = judge(figure.limits, value)
    sides[name] = verdict === 'IN' || side === 'onAim' ? 'in' : side
  }
  return sides
}

/** A figure of the strip with its limits, by the trade's word. */
export const stripFigure = ({ check, known }: Situation, name: keyof typeof words): { value: number; aim: number } | undefined => {
  if (check.kind !== 'strip') return undefined
  const figure = check.figures.find((it) => words[name].test(it.figure))
  const value = figure && known.stripFigures?.[figure.figure]
  return figure && value !== undefined ? { value, aim: figure.limits.aim } : undefined
}
