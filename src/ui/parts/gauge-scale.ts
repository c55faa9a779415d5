import type { Limits } from '../../plan/limits.ts'

export interface GaugeScale {
  /** −1 at the bottom of the column, 0 at the aim, 1 at the top; what lies beyond stays just inside its end. */
  share(value: number): number
}

/** The column shows the aim in its middle and reaches well past the action limit that is farther from it. */
export const gaugeScale = (limits: Limits): GaugeScale => {
  const given = [limits.actionHigh, limits.actionLow, limits.warningHigh, limits.warningLow].filter((it) => it !== undefined)
  const reach = Math.max(...given.map((it) => Math.abs(it - limits.aim)), Math.abs(limits.aim) * 1e-3, 1e-6)
  const span = reach * 1.6
  return { share: (value) => Math.max(-0.97, Math.min(0.97, (value - limits.aim) / span)) }
}
