import { guardChecks, type Guard } from '../guards.ts'
import type { Interlock } from '../interlock.ts'
import { isNotOverdue, lastMark } from '../lookup.ts'
import { isAcid } from '../nature.ts'
import { say, type Refused } from '../say.ts'

const source = 'Exhaust over the tank: manual of a colour print process, 2006; eyewash: McCann; that they hold the dosing: common practice, no source'

/** No acid into any bath while the exhaust or the eyewash is overdue for its check, or was found not right. */
export const exhaustAndEyewash: Interlock = (asked) =>
  isAcid(asked.material) ? (guarded(asked, 'exhaust') ?? guarded(asked, 'eyewash')) : undefined

const guarded = ({ lab, plan, now, machine }: Parameters<Interlock>[0], guard: Guard): Refused | undefined => {
  const checks = guardChecks(plan, machine, guard)
  if (!checks.length) return { code: `no${capital(guard)}Check`, facts: {}, doFirst: say(`add${capital(guard)}CheckToPlan`), source }
  for (const check of checks) {
    const mark = lastMark(lab, check, now)
    const facts = { check: check.id, ...(mark ? { foundAt: mark.time } : {}) }
    if (!mark || !isNotOverdue(lab, plan, check, mark, now)) return { code: `${guard}Overdue`, facts, doFirst: say(`check${capital(guard)}`, { check: check.id }), source }
    if (mark.verdict === 'ACT') return { code: `${guard}NotRight`, facts, doFirst: say(`mend${capital(guard)}`, { check: check.id }), source }
  }
  return undefined
}

const capital = (word: string): string => word.charAt(0).toUpperCase() + word.slice(1)
