import type { WrittenPlan } from './written-plan.ts'

export type ListName = 'people' | 'shifts' | 'machines' | 'stations' | 'checks' | 'materials' | 'methods' | 'formulas' | 'cautions'

/**
 * The plan without one of its parts and without what cannot stand alone: a machine takes its stations with it, a station its checks. What only
 * named it no longer does; where the name was needed (a formula's station, a material's caution), the plan is refused with that place until it is mended.
 */
export const without = (plan: WrittenPlan, list: ListName, id: string): WrittenPlan => {
  switch (list) {
    case 'machines': {
      const stations = plan.machines.find((it) => it.id === id)?.stations.map((it) => it.id) ?? []
      const rest = withoutStations(plan, new Set(stations))
      return { ...rest, machines: rest.machines.filter((it) => it.id !== id) }
    }
    case 'stations':
      return withoutStations(plan, new Set([id]))
    case 'checks':
      return withoutChecks(plan, new Set([id]))
    case 'methods':
      return { ...plan, methods: plan.methods.filter((it) => it.id !== id), checks: plan.checks.map((check) => ('method' in check && check.method === id ? less(check, 'method') : check)) }
    case 'people': {
      const rest = { ...plan, people: plan.people.filter((it) => it.id !== id) }
      return plan.onCall === id ? less(rest, 'onCall') : rest
    }
    case 'shifts':
      return { ...plan, shifts: plan.shifts.filter((it) => it.id !== id) }
    case 'materials':
      return {
        ...plan,
        materials: plan.materials.filter((it) => it.id !== id),
        ...(plan.formulas ? { formulas: plan.formulas.map((formula) => ({ ...formula, steps: formula.steps.map((step) => (step.material === id ? less(step, 'material') : step)) })) } : {}),
      }
    case 'cautions':
      return plan.cautions ? { ...plan, cautions: plan.cautions.filter((it) => it.id !== id) } : plan
    case 'formulas':
      return plan.formulas ? { ...plan, formulas: plan.formulas.filter((it) => it.id !== id) } : plan
  }
}

const less = <T extends object, K extends keyof T>(thing: T, key: K): T => {
  const { [key]: _, ...rest } = thing
  return rest as T
}

const withoutStations = (plan: WrittenPlan, gone: ReadonlySet<string>): WrittenPlan => {
  const rest = withoutChecks(plan, new Set(plan.checks.filter(({ station }) => gone.has(station)).map(({ id }) => id)))
  return {
    ...rest,
    machines: rest.machines.map((machine) => ({ ...machine, stations: machine.stations.filter(({ id }) => !gone.has(id)) })),
    materials: rest.materials.map((material) => ({ ...material, for: material.for.filter((id) => !gone.has(id)) })),
  }
}

const withoutChecks = (plan: WrittenPlan, gone: ReadonlySet<string>): WrittenPlan => ({
  ...plan,
  checks: plan.checks
    .filter(({ id }) => !gone.has(id))
    .map((check) => ('pairedWith' in check && check.pairedWith !== undefined && gone.has(check.pairedWith) ? less(less(check, 'pairedWith'), 'pairedWithin') : check)),
})
