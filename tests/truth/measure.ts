import { calculationById } from '../../src/science/catalogue.ts'
import { resultOf } from '../../src/science/evaluate.ts'
import { Refusal } from '../../src/science/refusal.ts'
import type { TruthCase } from './cases.ts'
import { kernels } from './kernels.ts'
import { tolerances } from './tolerances.ts'

export interface Miss {
  /** Place in the result: `after[1].gramsPerLitre`. */
  path: string
  /** The same without indexes, as the table of tolerances names it. */
  field: string
  error: number
  /** Undefined when the table has no tolerance for the field. */
  tolerance: number | undefined
}

export interface Measured {
  numbers: Miss[]
  /** What is wrong apart from numbers: another word, a list of another length, no refusal. */
  mismatches: string[]
}

export const tableKey = ({ calculation, set }: Pick<TruthCase, 'calculation' | 'set'>): string =>
  set === undefined ? calculation : `${calculation} @ ${set}`

export const isWithin = ({ error, tolerance }: Miss): boolean => tolerance !== undefined && error <= tolerance

/** Runs one case and says how far each expected number lies from the answer. Throws when the calculation is unknown. */
export const measure = (it: TruthCase): Measured => {
  const measured: Measured = { numbers: [], mismatches: [] }
  const answer = answerOf(it)
  if ('refuses' in it.expect) {
    if (answer instanceof Refusal) compareRefusal(answer, it.expect['refuses'] as Record<string, unknown>, measured)
    else measured.mismatches.push(`answers ${JSON.stringify(answer)} where it should refuse`)
  } else if (answer instanceof Refusal)
    measured.mismatches.push(`refuses (${answer.code} ${answer.field}: ${JSON.stringify(answer.value)}, allowed ${answer.allowed})`)
  else compare(answer, it.expect, '', it, measured)
  return measured
}

const answerOf = (it: TruthCase): unknown => {
  try {
    const kernel = kernels[it.calculation]
    if (kernel) return kernel(it.inputs)
    const entry = calculationById(it.calculation)
    if (!entry) throw new Error(`${it.file} ${it.id}: there is no calculation ${it.calculation}`)
    return resultOf(entry, it.inputs)
  } catch (error) {
    if (error instanceof Refusal) return error
    throw error
  }
}

const compareRefusal = (refusal: Refusal, wanted: Record<string, unknown>, into: Measured): void => {
  for (const [name, value] of Object.entries(wanted)) {
    const found = refusal[name as keyof Refusal]
    if (found !== value) into.mismatches.push(`refuses with ${name} ${JSON.stringify(found)}, expected ${JSON.stringify(value)}`)
  }
}

const compare = (found: unknown, wanted: unknown, path: string, it: TruthCase, into: Measured): void => {
  if (typeof wanted === 'number') {
    if (typeof found !== 'number') into.mismatches.push(`${path} is ${JSON.stringify(found)}, expected ${wanted}`)
    else {
      const field = path.replaceAll(/\[\d+\]/g, '')
      into.numbers.push({ path, field, error: Math.abs(found - wanted), tolerance: toleranceFor(it, field) })
    }
  } else if (Array.isArray(wanted)) {
    if (!Array.isArray(found) || found.length !== wanted.length)
      into.mismatches.push(`${path} is ${JSON.stringify(found)}, expected ${wanted.length} entries`)
    else wanted.forEach((entry, index) => compare(found[index], entry, `${path}[${index}]`, it, into))
  } else if (wanted && typeof wanted === 'object') {
    for (const [name, value] of Object.entries(wanted))
      compare((found as Record<string, unknown> | null | undefined)?.[name], value, path ? `${path}.${name}` : name, it, into)
  } else if (found !== wanted) into.mismatches.push(`${path} is ${JSON.stringify(found)}, expected ${JSON.stringify(wanted)}`)
}

/** The tolerance of the field itself or, for values by name, of the table it stands in. */
const toleranceFor = (it: TruthCase, field: string): number | undefined => {
  const table = tolerances[tableKey(it)]
  for (let name = field; name; name = name.slice(0, Math.max(0, name.lastIndexOf('.')))) {
    const tolerance = table?.[name]
    if (tolerance !== undefined) return tolerance
  }
  return undefined
}
