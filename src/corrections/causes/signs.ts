import type { StripCheck } from '../../plan/check.ts'
import { figureLimits } from '../../plan/judge-strip.ts'
import type { Limits } from '../../plan/limits.ts'
import { above, below } from '../../science/decimal.ts'

/** Which way a figure of the strip lies; `up` means more density for fog, more speed, more contrast. */
export type Sign = 'up' | 'down' | 'same'
export type StripSign = 'fog' | 'speed' | 'gamma'
export type Signs = { readonly [of in StripSign]?: Sign }

/** A figure leans one way from half of its warning distance on: less is noise. Common practice, no source. */
const leansAt = 0.5

const words: Readonly<Record<StripSign, RegExp>> = { fog: /fog|d-?min/i, speed: /speed|^ld$/i, gamma: /gamma|contrast|gradient/i }

/** A speed point stated as a log exposure falls when the film gets faster. */
const fallsWithSpeed = /log/i

const distance = ({ aim, warningLow, warningHigh, actionLow, actionHigh }: Limits, side: 'low' | 'high'): number | undefined => {
  const at = side === 'high' ? (warningHigh ?? actionHigh) : (warningLow ?? actionLow)
  return at === undefined ? undefined : Math.abs(at - aim)
}

/** Share of the way from the aim to the warning limit, with its sign; a side without a limit takes the other's distance. */
export const leanOf = (limits: Limits, value: number): number => {
  const off = value - limits.aim
  const far = distance(limits, off > 0 ? 'high' : 'low') ?? distance(limits, off > 0 ? 'low' : 'high')
  return far === undefined || far === 0 ? 0 : off / far
}

export const signsOf = (check: StripCheck, figures: Readonly<Record<string, number>>, aims?: Readonly<Record<string, number>>): Signs => {
  const signs: { [of in StripSign]?: Sign } = {}
  for (const [of, pattern] of Object.entries(words) as [StripSign, RegExp][]) {
    const figure = check.figures.find((it) => pattern.test(it.figure))
    const value = figure && figures[figure.figure]
    if (!figure || value === undefined) continue
    const lean = leanOf(figureLimits(figure, aims), value) * (of === 'speed' && fallsWithSpeed.test(figure.unit) ? -1 : 1)
    signs[of] = above(lean, leansAt) ? 'up' : below(lean, -leansAt) ? 'down' : 'same'
  }
  return signs
}

/** How a figure came to where it is. Five one way is a trend, even inside the limits (US Army subcourse SS0513). */
export type Course = 'jump' | 'drift' | 'unknown'

const trendLength = 5
/** Share of the whole deviation that one step must make to be a jump. Common practice, no source. */
const jumpShare = 0.6

/** `values` oldest first, the strip itself last. */
export const courseOf = (values: readonly number[], aim: number): Course => {
  const last = values.at(-1)
  const before = values.at(-2)
  if (last === undefined || before === undefined) return 'unknown'
  const tail = values.slice(-trendLength)
  const oneWay = (side: 1 | -1): boolean => tail.length === trendLength && tail.every((value, index) => index === 0 || (value - tail[index - 1]!) * side > 0)
  if (oneWay(1) || oneWay(-1)) return 'drift'
  const off = last - aim
  return off !== 0 && (last - before) / off >= jumpShare ? 'jump' : 'unknown'
}
