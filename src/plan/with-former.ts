import type { LabPlan } from './lab-plan.ts'

const missing = <T extends { id: string }>(own: readonly T[], former: readonly T[]): T[] => {
  const here = new Set(own.map(({ id }) => id))
  return former.filter(({ id }) => !here.has(id))
}

/**
 * The plan with what former ones had and it no longer has, each as it last stood: to read what was said of that, never to work by. What was taken out
 * stands after what is there. The newest of the former plans comes first; without a gap the plan itself comes back.
 */
export const withFormer = (plan: LabPlan, former: readonly LabPlan[]): LabPlan =>
  former.reduce((known, earlier) => {
    const here = new Set(known.machines.flatMap(({ stations }) => stations.map(({ id }) => id)))
    const machines = known.machines.map((machine) => {
      const gone = (earlier.machines.find(({ id }) => id === machine.id)?.stations ?? []).filter(({ id }) => !here.has(id))
      return gone.length ? { ...machine, stations: [...machine.stations, ...gone] } : machine
    })
    // A station may have gone to another machine since: it stays there.
    const goneMachines = missing(known.machines, earlier.machines).map((machine) => ({ ...machine, stations: machine.stations.filter(({ id }) => !here.has(id)) }))
    const lists = { people: missing(known.people, earlier.people), checks: missing(known.checks, earlier.checks), materials: missing(known.materials, earlier.materials), formulas: missing(known.formulas ?? [], earlier.formulas ?? []) }
    if (!goneMachines.length && machines.every((machine, index) => machine === known.machines[index]) && Object.values(lists).every((list) => !list.length)) return known
    return {
      ...known,
      people: [...known.people, ...lists.people],
      machines: [...machines, ...goneMachines],
      checks: [...known.checks, ...lists.checks],
      materials: [...known.materials, ...lists.materials],
      ...(known.formulas || lists.formulas.length ? { formulas: [...(known.formulas ?? []), ...lists.formulas] } : {}),
    }
  }, plan)
