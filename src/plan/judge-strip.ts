import type { StripCheck } from './check.ts'
import { judge, limitsAbout, type Judged, type Limits, type Verdict } from './limits.ts'

export interface StripJudged {
  /** The worst of its figures. */
  verdict: Verdict
  /** Each figure that the plan has limits for and the strip gave. */
  figures: { [figure: string]: Judged }
}

type Figures = Readonly<Record<string, number>>

/** Limits of a figure: the plan's, or as far about the aim of the batch that the strip is of. */
export const figureLimits = ({ figure, limits }: StripCheck['figures'][number], aims: Figures = {}): Limits => {
  const aim = aims[figure]
  return aim === undefined ? limits : limitsAbout(limits, aim)
}

/** `aims`: figures of the batch's aims, where the strip's batch has any. */
export const judgeStrip = (check: StripCheck, figures: Figures, aims: Figures = {}): StripJudged => {
  const judged: StripJudged['figures'] = {}
  for (const each of check.figures) {
    const value = figures[each.figure]
    if (value !== undefined) judged[each.figure] = judge(figureLimits(each, aims), value)
  }
  const verdicts = Object.values(judged).map(({ verdict }) => verdict)
  // Nothing is known of a strip with steps that did not give one of its figures: it is not in limits, and a second strip is asked for.
  const isWhole = !check.steps || check.figures.every(({ figure }) => judged[figure] !== undefined)
  return { verdict: !isWhole || verdicts.includes('ACT') ? 'ACT' : verdicts.includes('WARN') ? 'WARN' : 'IN', figures: judged }
}
