import { keyOfEntry } from '../../plan/changes.ts'
import type { ListName } from '../../plan/without.ts'
import type { WrittenPlan } from '../../plan/written-plan.ts'
import type { Words } from '../words/words.ts'
import { pathOf, valueAt, type Path } from './at.ts'
import { fieldAt, type PartField, type PartFields } from './field.ts'
import { checkFields, laboratoryFields, partFields } from './parts.ts'

/** A place in the plan, as a person would name it and where it is edited. */
export interface Place {
  /** The part: a check with its station, a person. */
  what: string
  /** The field within it; empty where it is the part itself. */
  field: string
  described: PartField | undefined
  /** Unit of the check, for numbers that are in it. */
  checkUnit: string | undefined
  href: string
}

export const partHref = (list: ListName | 'laboratory', id?: string): string => `/menu/plan/${list}${id === undefined ? '' : `/${encodeURIComponent(id)}`}`

/** From a path that counts (`checks[3].limits.aim`) to one that names (`checks`, `neg-1-fix-ph`, `limits`, `aim`). */
export const namedPath = (plan: WrittenPlan, text: string): string[] => {
  const path = pathOf(text)
  return path.map((key, index) => (typeof key === 'number' ? (keyOfEntry(valueAt(plan, path.slice(0, index + 1))) ?? String(key)) : key))
}

const isEntryOf = (at: unknown, key: string): number => (Array.isArray(at) ? at.findIndex((it, index) => (keyOfEntry(it) ?? String(index)) === key) : -1)

/** The value at a path that names. */
const namedValue = (thing: unknown, path: readonly string[]): unknown =>
  path.reduce<unknown>((at, key) => (Array.isArray(at) ? (at as unknown[])[isEntryOf(at, key)] : valueAt(at, [key])), thing)

/** Names a place of one plan; for something that was taken out, of the plan that still had it. */
export const placeOf = (plan: WrittenPlan, path: readonly string[], words: Words): Place => {
  const say = words.plan
  const part = (list: ListName, id: string | undefined, name: string | undefined, fields: PartFields, from: number, checkUnit?: string): Place => {
    const found = fieldAt(fields, path.slice(from), (inner) => kindAt(plan, [...path.slice(0, from), ...inner]))
    const rest = path.slice(from)
    const isOtherUnit = list === 'checks' && rest[0] === 'figures' && rest[1] !== undefined
    const figureUnit = isOtherUnit ? valueAt(namedValue(plan, path.slice(0, from + 2)), ['unit']) : undefined
    return {
      what: name ?? (id === undefined ? say.lists[list].title : `${say.lists[list].one} ${id}`),
      field: found.length ? fieldNames(found, rest, say.nameOf) : rest.filter((key) => key !== 'id').join(' › '),
      described: found.length && isWhole(found, rest) ? found.at(-1) : undefined,
      checkUnit: typeof figureUnit === 'string' ? figureUnit : checkUnit,
      href: partHref(list, id),
    }
  }
  const [list, id] = path
  if (list === 'machines' && id !== undefined) {
    const machine = plan.machines.find((it) => it.id === id)
    if (path[2] === 'stations' && path[3] !== undefined) {
      const station = machine?.stations.find((it) => it.id === path[3])
      return part('stations', path[3], station && `${machine!.name} · ${station.name}`, partFields.stations, 4)
    }
    return path[2] === 'stations' ? { ...part('machines', id, machine?.name, {}, 2), field: say.lists.stations.title } : part('machines', id, machine?.name, partFields.machines, 2)
  }
  if (list === 'checks' && id !== undefined) {
    const check = plan.checks.find((it) => it.id === id)
    const station = plan.machines.flatMap(({ stations }) => stations).find((it) => it.id === check?.station)
    const name = check && [station?.name, check.name].filter(Boolean).join(' · ')
    const place = part('checks', id, name, check ? checkFields[check.kind] : {}, 2, check && 'unit' in check ? check.unit : undefined)
    return path[2] === 'setBy' ? { ...place, field: say.whoSet } : place
  }
  if (list !== undefined && list in partFields && id !== undefined) {
    const entry = (plan[list as 'people'] ?? []).find((it) => it.id === id)
    const material = list === 'materials' ? plan.materials.find((it) => it.id === id) : undefined
    return part(list as 'people', id, entry?.name, partFields[list as 'people'], 2, material?.stock?.unit)
  }
  if (list !== undefined && list in say.lists) return part(list as ListName, undefined, undefined, {}, 1)
  const found = fieldAt(laboratoryFields, path, () => undefined)
  return { what: say.laboratory, field: found.length ? fieldNames(found, path, say.nameOf) : path.join(' › '), described: found.length && isWhole(found, path) ? found.at(-1) : undefined, checkUnit: undefined, href: partHref('laboratory') }
}

const kindAt = (plan: WrittenPlan, path: readonly string[]): string | undefined => {
  const kind = valueAt(namedValue(plan, path), ['kind'])
  return typeof kind === 'string' ? kind : undefined
}

/** Whether the fields found reach to the end of the path; an entry of a list is then no field of its own. */
const isWhole = (found: readonly PartField[], path: readonly string[]): boolean => path.length === found.length + found.slice(0, -1).filter(({ kind }) => kind === 'list').length

/** `Aim and limits › Action limit, high`; an entry of a list by what it is known by. */
const fieldNames = (found: readonly PartField[], path: readonly string[], nameOf: Words['plan']['nameOf']): string => {
  const names: string[] = []
  let index = 0
  for (const field of found) {
    names.push(nameOf(field.says))
    index++
    if (field.kind === 'list' && path[index] !== undefined) names.push(/^\d+$/.test(path[index]!) ? String(Number(path[index]) + 1) : path[index]!), index++
  }
  return names.join(' › ')
}

export type { Path }
