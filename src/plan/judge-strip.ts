import type { StripCheck } from './check.ts'
import { judge, type Judged, type Verdict } from './limits.ts'

export interface StripJudged {
  /** The worst of its figures. */
  verdict: Verdict
  /** Each figure that the plan has limits for and the strip gave. */
  figures: { [figure: string]: Judged }
}

export const judgeStrip = (check: StripCheck, figures: Readonly<Record<string, number>>): StripJudged => {
  const judged: StripJudged['figures'] = {}
  for (const { figure, limits } of check.figures) {
    const value = figures[figure]
    if (value !== undefined) judged[figure] = judge(limits, value)
  }
  const verdicts = Object.values(judged).map(({ verdict }) => verdict)
  return { verdict: verdicts.includes('ACT') ? 'ACT' : verdicts.includes('WARN') ? 'WARN' : 'IN', figures: judged }
}
