import type { Check } from './check.ts'
import type { CheckId, MachineId, MaterialId, PersonId, StationId } from './ids.ts'
import type { LabPlan, Person } from './lab-plan.ts'
import type { Machine, Station } from './machine.ts'
import type { Material } from './material.ts'

/** Look-ups in a plan that has been parsed, so an id that names nothing is a fault of ours. */
const found = <T>(thing: T | undefined, what: string, id: string): T => {
  if (thing === undefined) throw new Error(`the plan has no ${what} ${id}`)
  return thing
}

export const machineOf = (plan: LabPlan, id: MachineId): Machine => found(plan.machines.find((it) => it.id === id), 'machine', id)
export const checkOf = (plan: LabPlan, id: CheckId): Check => found(plan.checks.find((it) => it.id === id), 'check', id)
export const materialOf = (plan: LabPlan, id: MaterialId): Material => found(plan.materials.find((it) => it.id === id), 'material', id)
export const personOf = (plan: LabPlan, id: PersonId): Person | undefined => plan.people.find((it) => it.id === id)

export const placeOf = (plan: LabPlan, id: StationId): { machine: Machine; station: Station } => {
  for (const machine of plan.machines) {
    const station = machine.stations.find((it) => it.id === id)
    if (station) return { machine, station }
  }
  throw new Error(`the plan has no station ${id}`)
}
export const checksOfMachine = (plan: LabPlan, machine: Machine): Check[] => {
  const order = new Map(machine.stations.map((station, index) => [station.id, index]))
  return plan.checks
    .filter((check) => order.has(check.station))
    .sort((a, b) => order.get(a.station)! - order.get(b.station)!)
}
