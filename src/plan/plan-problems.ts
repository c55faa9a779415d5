import type * as z from 'zod/mini'
import type { Substance } from '../science/substances.ts'
import { substances } from '../science/substances-table.ts'
import { labPlan, type LabPlan } from './lab-plan.ts'

/** What is wrong with a plan, and where: `checks[3].station` names no station. */
export interface PlanProblem {
  path: string
  code:
    | 'shape' | 'repeatedId' | 'unknownId' | 'limitOrder' | 'aimOutsideLimits' | 'rangeOrder' | 'timeZone' | 'noSupervisor' | 'substance'
    /** Two readings that cannot be judged together: a look or a strip, itself, or another unit where they are compared. */
    | 'pair'
    /** Two shifts that begin at the same time: nobody could tell which is on. */
    | 'shiftTimes'
    /** Volume and surface of a bath make a tank of no likely depth. */
    | 'depth'
    /** A card of the laboratory's own where the app has one for that substance: its words may only be added. */
    | 'cautionReplaced'
    /** A liquid that was counted by weight, or a solid by volume. */
    | 'stockUnit'
  detail: string
  /** What a shape lacks. */
  why?: ShapeFault
  /** The bound, where there is one. */
  bound?: number
}

export type ShapeFault =
  | 'missing' | 'notANumber' | 'notText' | 'notAChoice' | 'notAnId' | 'form' | 'atLeast' | 'above' | 'atMost' | 'below' | 'tooShort' | 'tooLong' | 'tooFew' | 'tooMany' | 'unknownField' | 'wrongKind'

export type ParsedPlan = { ok: true; plan: LabPlan } | { ok: false; problems: PlanProblem[] }

/**
 * Reads a plan from anywhere outside: the shape by its schema, then what a schema cannot say: ids that name something,
 * limits in order, a time zone that exists.
 */
export const parsePlan = (raw: unknown): ParsedPlan => {
  const shaped = labPlan.safeParse(raw)
  if (!shaped.success) {
    return {
      ok: false,
      problems: shaped.error.issues.map((issue) => shapeProblem(raw, issue)),
    }
  }
  const plan = shaped.data
  const problems = [repeatedIds, unknownIds, limitProblems, placeProblems, pairProblems, surfaceProblems, shiftProblems, substanceProblems, stockProblems].flatMap((find) => find(plan))
  return problems.length ? { ok: false, problems } : { ok: true, plan: shaped.data }
}

const shapeProblem = (raw: unknown, issue: z.core.$ZodIssue): PlanProblem => {
  const problem = (why: ShapeFault, bound?: number | bigint): PlanProblem => ({
    path: pathText(issue.path),
    code: 'shape',
    detail: issue.code === 'unrecognized_keys' ? issue.keys.join(', ') : issue.message,
    why,
    ...(bound === undefined ? {} : { bound: Number(bound) }),
  })
  const value = issue.path.reduce<unknown>((at, key) => (at as Record<PropertyKey, unknown> | undefined)?.[key], raw)
  if (value === undefined) return problem('missing')
  switch (issue.code) {
    case 'invalid_type':
      return problem(issue.expected === 'number' ? 'notANumber' : issue.expected === 'string' ? 'notText' : 'wrongKind')
    case 'too_small':
      if (issue.origin === 'string') return problem(value === '' ? 'missing' : 'tooShort', issue.minimum)
      return issue.origin === 'array' ? problem('tooFew', issue.minimum) : problem(issue.inclusive === false ? 'above' : 'atLeast', issue.minimum)
    case 'too_big':
      if (issue.origin === 'string') return problem('tooLong', issue.maximum)
      return issue.origin === 'array' ? problem('tooMany', issue.maximum) : problem(issue.inclusive === false ? 'below' : 'atMost', issue.maximum)
    case 'invalid_format':
      return problem(issue.path.at(-1) === 'id' ? 'notAnId' : 'form')
    case 'unrecognized_keys':
      return problem('unknownField')
    default:
      return problem('notAChoice')
  }
}

const pathText = (path: readonly PropertyKey[]): string =>
  path.reduce<string>((text, key) => (typeof key === 'number' ? `${text}[${key}]` : text ? `${text}.${String(key)}` : String(key)), '')

const repeatedIds = (plan: LabPlan): PlanProblem[] => {
  const lists: [string, readonly { id: string }[]][] = [
    ['people', plan.people], ['shifts', plan.shifts], ['machines', plan.machines], ['checks', plan.checks],
    ['materials', plan.materials], ['methods', plan.methods], ['formulas', plan.formulas ?? []], ['cautions', plan.cautions ?? []],
  ]
  const problems: PlanProblem[] = []
  const seenStations = new Set<string>()
  plan.machines.forEach((machine, m) =>
    machine.stations.forEach((station, s) => {
      if (seenStations.has(station.id)) problems.push({ path: `machines[${m}].stations[${s}].id`, code: 'repeatedId', detail: station.id })
      seenStations.add(station.id)
    }),
  )
  for (const [list, entries] of lists) {
    const seen = new Set<string>()
    entries.forEach(({ id }, index) => {
      if (seen.has(id)) problems.push({ path: `${list}[${index}].id`, code: 'repeatedId', detail: id })
      seen.add(id)
    })
  }
  return problems
}

const unknownIds = (plan: LabPlan): PlanProblem[] => {
  const stations = new Set<string>(plan.machines.flatMap((machine) => machine.stations.map(({ id }) => id)))
  const checks = new Set<string>(plan.checks.map(({ id }) => id))
  const methods = new Set<string>(plan.methods.map(({ id }) => id))
  const problems: PlanProblem[] = []
  const must = (known: Set<string>, id: string | undefined, path: string): void => {
    if (id !== undefined && !known.has(id)) problems.push({ path, code: 'unknownId', detail: id })
  }
  plan.checks.forEach((check, index) => {
    must(stations, check.station, `checks[${index}].station`)
    if (check.kind === 'reading') {
      must(checks, check.pairedWith, `checks[${index}].pairedWith`)
      must(methods, check.method, `checks[${index}].method`)
    }
  })
  plan.materials.forEach((material, m) => material.for.forEach((id, f) => must(stations, id, `materials[${m}].for[${f}]`)))
  plan.methods.forEach(({ titrants = {} }, index) => Object.entries(titrants).forEach(([field, id]) => must(checks, id, `methods[${index}].titrants.${field}`)))
  const materials = new Set<string>(plan.materials.map(({ id }) => id))
  plan.formulas?.forEach((formula, f) => {
    must(stations, formula.for, `formulas[${f}].for`)
    formula.steps.forEach(({ material }, s) => must(materials, material, `formulas[${f}].steps[${s}].material`))
  })
  must(new Set<string>(plan.people.map(({ id }) => id)), plan.onCall, 'onCall')
  return problems
}

const limitProblems = (plan: LabPlan): PlanProblem[] => {
  const problems: PlanProblem[] = []
  const ordered = (path: string, given: { aim: number; warningLow?: number | undefined; warningHigh?: number | undefined; actionLow?: number | undefined; actionHigh?: number | undefined }): void => {
    const line = [given.actionLow, given.warningLow, given.aim, given.warningHigh, given.actionHigh].filter((value) => value !== undefined)
    const inOrder = line.every((value, index) => index === 0 || line[index - 1]! <= value)
    if (!inOrder) problems.push({ path, code: 'limitOrder', detail: line.join(' ≤ ') })
  }
  plan.checks.forEach((check, index) => {
    if (check.kind === 'reading') {
      ordered(`checks[${index}].limits`, check.limits)
      const { actionLow, actionHigh, aim } = check.limits
      const least = Math.min(...[actionLow, aim].filter((it) => it !== undefined))
      const most = Math.max(...[actionHigh, aim].filter((it) => it !== undefined))
      if (check.holdBelow !== undefined && check.holdBelow > least) problems.push({ path: `checks[${index}].holdBelow`, code: 'limitOrder', detail: `${check.holdBelow} ≤ ${least}` })
      if (check.holdAbove !== undefined && check.holdAbove < most) problems.push({ path: `checks[${index}].holdAbove`, code: 'limitOrder', detail: `${most} ≤ ${check.holdAbove}` })
      if (check.instrument.low >= check.instrument.high)
        problems.push({ path: `checks[${index}].instrument`, code: 'rangeOrder', detail: `${check.instrument.low} to ${check.instrument.high}` })
      else if (check.limits.aim < check.instrument.low || check.limits.aim > check.instrument.high)
        problems.push({ path: `checks[${index}].limits.aim`, code: 'aimOutsideLimits', detail: `${check.limits.aim}` })
    }
    if (check.kind === 'strip') check.figures.forEach((figure, f) => ordered(`checks[${index}].figures[${f}].limits`, figure.limits))
  })
  return problems
}

const placeProblems = (plan: LabPlan): PlanProblem[] => {
  const problems: PlanProblem[] = []
  try {
    new Intl.DateTimeFormat('en', { timeZone: plan.timeZone })
  } catch {
    problems.push({ path: 'timeZone', code: 'timeZone', detail: plan.timeZone })
  }
  if (!plan.people.some(({ role }) => role === 'supervisor')) problems.push({ path: 'people', code: 'noSupervisor', detail: '' })
  return problems
}

/** A tank shallower than a hand or deeper than a house has a figure in another unit: 0.8 m² keyed as 80 dm². */
const surfaceProblems = (plan: LabPlan): PlanProblem[] =>
  plan.machines.flatMap((machine, m) =>
    machine.stations.flatMap(({ bath }, s): PlanProblem[] => {
      if (!bath?.surfaceSquareMetres) return []
      const metres = bath.litres / 1000 / bath.surfaceSquareMetres
      return metres >= 0.05 && metres <= 5 ? [] : [{ path: `machines[${m}].stations[${s}].bath.surfaceSquareMetres`, code: 'depth', detail: String(Number(metres.toPrecision(2))) }]
    }),
  )

const pairProblems = (plan: LabPlan): PlanProblem[] =>
  plan.checks.flatMap((check, index): PlanProblem[] => {
    if (check.kind !== 'reading' || check.pairedWith === undefined) return []
    const other = plan.checks.find(({ id }) => id === check.pairedWith)
    if (!other) return []
    const fits = other.kind === 'reading' && other.id !== check.id && (check.pairedWithin === undefined || other.unit === check.unit)
    return fits ? [] : [{ path: `checks[${index}].pairedWith`, code: 'pair', detail: check.pairedWith }]
  })

const shiftProblems = ({ shifts }: LabPlan): PlanProblem[] =>
  shifts.flatMap(({ from }, index): PlanProblem[] =>
    shifts.findIndex((other) => other.from === from) < index ? [{ path: `shifts[${index}].from`, code: 'shiftTimes', detail: from }] : [],
  )

const stockProblems = ({ materials }: LabPlan): PlanProblem[] =>
  materials.flatMap(({ unit, stock }, index): PlanProblem[] => (stock && (unit === 'mL') !== (stock.unit === 'L') ? [{ path: `materials[${index}].stock.unit`, code: 'stockUnit', detail: unit === 'mL' ? 'L' : 'kg' }] : []))

/** What a dose would be worked out of must be known to the calculations before somebody stands at the tank. */
const substanceProblems = (plan: LabPlan): PlanProblem[] => {
  const problem = (path: string, substance: string, form: string | undefined): PlanProblem[] => {
    if (!Object.hasOwn(substances, substance)) return [{ path: `${path}.substance`, code: 'substance', detail: substance }]
    const forms: readonly string[] = substances[substance as Substance].forms
    return form === undefined || forms.includes(form) ? [] : [{ path: `${path}.form`, code: 'substance', detail: `${substance}: ${forms.join(', ')}` }]
  }
  return [
    ...plan.machines.flatMap((machine, m) =>
      machine.stations.flatMap((station, s) =>
        (station.bath?.constituents ?? []).flatMap(({ substance, form }, c) => problem(`machines[${m}].stations[${s}].bath.constituents[${c}]`, substance, form)),
      ),
    ),
    ...(plan.formulas ?? []).flatMap((formula, f) => formula.steps.flatMap(({ substance, form }, s) => problem(`formulas[${f}].steps[${s}]`, substance, form))),
    // A titrant or a solvent goes into no bath and may be anything.
    ...plan.materials.flatMap((material, index) =>
      material.for.length ? problem(`materials[${index}]`, material.substance, material.strength.kind === 'solid' ? material.strength.form : undefined) : [],
    ),
  ]
}
