import type { LabPlan } from '../plan/lab-plan.ts'

/**
 * What the plan fixes for a calculation: a method that names it carries the figures which only the laboratory can know (consumption by the metre,
 * cathode area, time–gamma law). Numbers alone; undefined where the plan says nothing, and the remedy then says what it lacks.
 */
export const givenFor = (plan: LabPlan, calculation: string): { readonly [field: string]: number } | undefined => {
  const given = plan.methods.find((it) => it.calculation === calculation && it.given)?.given
  if (!given) return undefined
  return Object.fromEntries(Object.entries(given).flatMap(([field, value]) => (typeof value === 'number' ? [[field, value]] : [])))
}

/** Whether every named field is there. */
export const hasAll = <F extends string>(given: { readonly [field: string]: number } | undefined, fields: readonly F[]): given is { readonly [field in F]: number } =>
  given !== undefined && fields.every((field) => given[field] !== undefined)
