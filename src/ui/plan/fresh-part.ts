import { idsOf, newId } from '../../plan/new-id.ts'
import type { ListName } from '../../plan/without.ts'
import type { WrittenCheck, WrittenPlan } from '../../plan/written-plan.ts'

export interface FreshGiven {
  name: string
  by: { person: string; at: string }
  /** Machine of a new station, station of a new check. */
  under?: string | undefined
  check?: WrittenCheck['kind']
}

/**
 * The plan with one more part, as empty as it can be: what the schema needs and nobody has said is left out, and is named as missing until it is keyed.
 * The id is made of the name once and stays, as the record knows the part by it.
 */
export const withFreshPart = (plan: WrittenPlan, list: ListName, { name, by, under, check = 'reading' }: FreshGiven): { plan: WrittenPlan; id: string } => {
  const id = newId(list === 'stations' || list === 'checks' ? `${under}-${name}` : name, idsOf(plan), list)
  const unfinished = (part: object) => part as never
  switch (list) {
    case 'people':
      return { id, plan: { ...plan, people: [...plan.people, { id, name, role: 'operator' }] } }
    case 'shifts':
      return { id, plan: { ...plan, shifts: [...plan.shifts, unfinished({ id, name })] } }
    case 'materials':
      return { id, plan: { ...plan, materials: [...plan.materials, unfinished({ id, name, strength: { kind: 'solid', form: 'anhydrous' }, unit: 'g', for: [] })] } }
    case 'methods':
      return { id, plan: { ...plan, methods: [...plan.methods, { id, name, steps: [] }] } }
    case 'formulas':
      return { id, plan: { ...plan, formulas: [...(plan.formulas ?? []), unfinished({ id, name, steps: [] })] } }
    case 'cautions':
      return { id, plan: { ...plan, cautions: [...(plan.cautions ?? []), unfinished({ id, name, version: 1 })] } }
    case 'machines':
      return { id, plan: { ...plan, machines: [...plan.machines, unfinished({ id, name, gaugeMillimetres: 35, stations: [] })] } }
    case 'stations':
      return { id, plan: { ...plan, machines: plan.machines.map((machine) => (machine.id === under ? { ...machine, stations: [...machine.stations, unfinished({ id, name, short: name.slice(0, 7) })] } : machine)) } }
    case 'checks': {
      const common = { id, kind: check, station: under, name, schedule: { kind: 'interval', minutes: 60, graceMinutes: 15 }, states: ['running'], immediateHold: check === 'look', setBy: { kind: 'laboratory', ...by } }
      const own = { reading: { limits: {}, instrument: {} }, look: {}, strip: { figures: [] } }[check]
      return { id, plan: { ...plan, checks: [...plan.checks, unfinished({ ...common, ...own })] } }
    }
  }
}
