import type { Check } from './check.ts'
import { placeOf } from './find.ts'
import type { LabPlan } from './lab-plan.ts'

/** A check's name with its station's, which is not said twice: `Developer · temperature`, `Fixing bath 1 · pH`. */
export const fullName = (plan: LabPlan, { station, name }: Pick<Check, 'station' | 'name'>): string => {
  const place = placeOf(plan, station).station.name
  const said = place.replace(/ \d+$/, '')
  const rest = name.toLowerCase().startsWith(`${said.toLowerCase()} `) ? name.slice(said.length + 1) : name === place ? '' : name
  return rest ? `${place} · ${rest}` : place
}
