import type { LabPlan } from '../plan/lab-plan.ts'
import type { Line, LineOf } from './line.ts'
import { isOverPoured } from './over-poured.ts'

export interface ShiftIncident {
  /** Written down as one, or an add of more than was worked out. */
  line: LineOf<'note'> | LineOf<'add'>
  /** By a supervisor; undefined while none has taken note of it. */
  seen?: LineOf<'acknowledge'>
}

/** The incidents of a shift, and who took note of each. What an operator acknowledges is kept, and does not count. */
export const incidentsOf = (lines: readonly Line[], plan: LabPlan): ShiftIncident[] => {
  const supervisors = new Set(plan.people.flatMap(({ id, role }) => (role === 'supervisor' ? [id] : [])))
  const acknowledges = lines.filter((line) => line.kind === 'acknowledge')
  return lines.flatMap((line): ShiftIncident[] => {
    if (!(line.kind === 'note' && line.data.about === 'incident') && !(line.kind === 'add' && isOverPoured(line.data))) return []
    const seen = acknowledges.find(({ data, person }) => data.of === line.id && person !== null && supervisors.has(person))
    return [{ line, ...(seen ? { seen } : {}) }]
  })
}
