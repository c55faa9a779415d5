import { checkOf } from '../../plan/find.ts'
import type { LabPlan } from '../../plan/lab-plan.ts'
import { phaseAt, type Exception } from '../../projections/exceptions.ts'
import type { LabState } from '../../projections/lab-state.ts'
import { answerableExceptions } from '../../projections/left-behind.ts'
import { doneCount, type Round } from '../../rounds/kept-round.ts'
import { nextDueAt, walks } from '../../rounds/walk.ts'
import { timeText } from '../format.ts'
import type { Words } from '../words/words.ts'

export interface NextThing {
  label: string
  /** Absent where there is nothing to do but wait. */
  href?: string
}

/**
 * The one thing to do next. What was seen out of limits is confirmed first, a round once begun is finished, then baths are re-checked and
 * corrected, and only then a new round begins.
 */
export const nextThing = (lab: LabState, plan: LabPlan, round: Round | undefined, now: number, words: Words, seen: (exception: Exception) => number): NextThing => {
  const open = answerableExceptions(lab, plan).map((exception) => ({ exception, phase: phaseAt(exception, seen(exception)), name: checkOf(plan, exception.check).name }))
  const toConfirm = open.find(({ phase }) => phase === 'toConfirm')
  if (toConfirm) return { label: words.now.round.again(toConfirm.name), href: `/check/${toConfirm.exception.check}` }
  if (round) return { label: words.now.round.goOn(doneCount(round), round.steps.length), href: `/round/${round.machine}` }
  const toRecheck = open.find(({ phase }) => phase === 'toRecheck')
  if (toRecheck) return { label: words.now.round.recheck(toRecheck.name), href: `/check/${toRecheck.exception.check}` }
  const toCorrect = open.find(({ phase }) => phase === 'toCorrect')
  if (toCorrect) return { label: words.now.round.correct(toCorrect.name), href: `/exception/${toCorrect.exception.id}` }
  const [walk] = walks(lab, plan, now)
  if (walk) return { label: words.now.round.start(timeText(walk.dueAt, plan.timeZone), walk.checks.length), href: `/round/${walk.machine.id}` }
  const next = nextDueAt(lab, plan, now)
  return { label: next === undefined ? words.now.round.none : words.now.round.nextAt(timeText(next, plan.timeZone)) }
}
