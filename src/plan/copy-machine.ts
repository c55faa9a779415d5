import type { StationKind } from './machine.ts'
import { idsOf, newId } from './new-id.ts'
import type { WrittenPlan } from './written-plan.ts'

/** Places of the house, which serve every machine: a copied machine does not bring a second room or store with it. */
export const housePlaces: ReadonlySet<StationKind> = new Set(['silverCell', 'plant', 'room', 'mixing', 'solvent', 'instruments', 'effluent', 'stores'])

/**
 * The plan with one more machine, like another one: its stations and their checks under ids of their own, materials permitted in the same baths.
 * Who set an aim is copied with it: a starting value stays one, and what the laboratory set for one machine is shown as set by whom and when.
 */
export const copyMachine = (plan: WrittenPlan, machine: string, name: string): { plan: WrittenPlan; machine: string } => {
  const source = plan.machines.find(({ id }) => id === machine)
  if (!source) throw new Error(`the plan has no machine ${machine}`)
  const taken = idsOf(plan)
  const take = (wanted: string): string => {
    const id = newId(wanted, taken, 'machine')
    taken.add(id)
    return id
  }
  const own = take(name)
  const renamed = (id: string): string => take(`${own}-${id.startsWith(`${source.id}-`) ? id.slice(source.id.length + 1) : id}`)
  const kept = source.stations.filter(({ kind }) => !housePlaces.has(kind))
  const stations = new Map(kept.map(({ id }) => [id, renamed(id)]))
  const copied = plan.checks.filter(({ station }) => stations.has(station))
  const checks = new Map(copied.map(({ id }) => [id, renamed(id)]))
  return {
    machine: own,
    plan: {
      ...plan,
      machines: [...plan.machines, { ...source, id: own, name, stations: kept.map((station) => ({ ...station, id: stations.get(station.id)! })) }],
      checks: [
        ...plan.checks,
        ...copied.map((check) => ({
          ...check,
          id: checks.get(check.id)!,
          station: stations.get(check.station)!,
          // Paired with a check of the house it stays paired with that one.
          ...('pairedWith' in check && check.pairedWith !== undefined ? { pairedWith: checks.get(check.pairedWith) ?? check.pairedWith } : {}),
        })),
      ],
      materials: plan.materials.map((material) => ({
        ...material,
        for: [...material.for, ...material.for.map((id) => stations.get(id)).filter((id) => id !== undefined)],
      })),
    },
  }
}
