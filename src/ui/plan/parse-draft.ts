import { parsePlan, type ParsedPlan } from '../../plan/plan-problems.ts'
import type { WrittenPlan } from '../../plan/written-plan.ts'
import { cautionProblems } from '../../safety/own-cards.ts'

/** A plan as it may be signed: it holds by itself, and its cautions are there and weaken none of the app's. */
export const parseDraft = (raw: unknown): ParsedPlan => {
  const parsed = parsePlan(raw)
  const problems = parsed.ok ? cautionProblems(parsed.plan as WrittenPlan) : []
  return problems.length ? { ok: false, problems } : parsed
}
