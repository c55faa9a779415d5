import type { PlanProblem } from '../../plan/plan-problems.ts'
import { isObject } from '../../plan/same-value.ts'
import type { WrittenPlan } from '../../plan/written-plan.ts'
import { useWords } from '../app-context.ts'
import type { Words } from '../words/words.ts'
import { namedPath, placeOf } from './place-of.ts'

const shown = 8

/** What is wrong with a plan: the part, the field and the reason, in the words of the trade. `linked`: each leads to where it is mended. */
export const ProblemList = ({ problems, plan, linked }: { problems: readonly PlanProblem[]; plan: unknown; linked?: boolean }) => {
  const words = useWords()
  return (
    <ul class="changes">
      {problems.slice(0, shown).map((it, index) => {
        const place = placeIn(plan, it.path, words)
        return (
          <li key={index} class="change">
            <span>{linked && place ? <a href={place.href}>{place.what}</a> : (place?.what ?? <code>{it.path}</code>)}{place?.field ? ` › ${place.field}` : ''}</span>
            <span class="problem">{words.plan.problem(it)}</span>
          </li>
        )
      })}
      {problems.length > shown ? <li>{words.plan.moreProblems(problems.length - shown)}</li> : null}
    </ul>
  )
}

/** A file that is no plan at all has no parts to name. */
const placeIn = (plan: unknown, path: string, words: Words) =>
  isObject(plan) && ['people', 'shifts', 'machines', 'checks', 'materials', 'methods'].every((list) => Array.isArray(plan[list]) && (plan[list] as unknown[]).every(isObject)) && (plan['machines'] as { stations?: unknown }[]).every(({ stations }) => Array.isArray(stations))
    ? placeOf(plan as WrittenPlan, namedPath(plan as WrittenPlan, path), words)
    : undefined
