import type { PlanProblem } from '../../plan/plan-problems.ts'
import type { ListName } from '../../plan/without.ts'
import type { WrittenPlan } from '../../plan/written-plan.ts'
import { pathOf, pathText, type Path } from './at.ts'

/** Where a part stands in the plan's file. */
export const pathOfPart = (plan: WrittenPlan, list: ListName, id: string): Path | undefined => {
  if (list === 'stations') {
    for (const [m, machine] of plan.machines.entries()) {
      const s = machine.stations.findIndex((it) => it.id === id)
      if (s >= 0) return ['machines', m, 'stations', s]
    }
    return undefined
  }
  const index = (plan[list] ?? []).findIndex((it) => it.id === id)
  return index < 0 ? undefined : [list, index]
}

/** Problems of one part with what is in it: of a machine, those of its stations and their checks too. Without an id, of a whole list. */
export const problemsOfPart = (problems: readonly PlanProblem[], plan: WrittenPlan, list: ListName | 'laboratory', id?: string): PlanProblem[] => {
  const under = (path: Path | undefined) => {
    const text = path && pathText(path)
    return text === undefined ? [] : problems.filter((it) => it.path === text || it.path.startsWith(`${text}.`) || it.path.startsWith(`${text}[`))
  }
  if (list === 'laboratory') return problems.filter(({ path }) => ['name', 'timeZone', 'units', 'onCall', 'emergency'].includes(String(pathOf(path)[0])))
  if (id === undefined) return under([list])
  const own = under(pathOfPart(plan, list, id))
  const stations = list === 'stations' ? [id] : list === 'machines' ? (plan.machines.find((it) => it.id === id)?.stations.map((it) => it.id) ?? []) : []
  return [...own, ...plan.checks.filter(({ station }) => stations.includes(station)).flatMap((check) => under(pathOfPart(plan, 'checks', check.id)))]
}
