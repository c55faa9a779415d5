import type { ReadingCheck } from '../../plan/check.ts'
import type { Method } from '../../plan/lab-plan.ts'
import type { AnyCalculation } from '../../science/calculation.ts'
import type { Fields, NumberField } from '../../science/field.ts'

export interface AskedField {
  name: string
  field: NumberField
  /** What it is called at this bench. */
  label?: string | undefined
}

/** The input that a curve's end point fills. */
export const curveField = 'titrantMillilitres'

/**
 * What a person keys for one determination: the numbers that the calculation needs and neither plan, titrant nor curve gives, and those with a preset only
 * where the method asks for them. Without a calculation the figure itself.
 */
export const askedFields = (method: Method, check: ReadingCheck, calculation: AnyCalculation | undefined): AskedField[] => {
  const asks = method.asks ?? {}
  if (!calculation)
    return [{ name: 'value', label: asks['value'], field: { kind: 'number', unit: check.unit, says: check.name, atLeast: check.instrument.low, atMost: check.instrument.high } }]
  const isGiven = (name: string): boolean => method.given?.[name] !== undefined || method.titrants?.[name] !== undefined || (method.endPoint === 'curve' && name === curveField)
  return Object.entries(calculation.inputs as Fields).flatMap(([name, field]) => {
    if (field.kind !== 'number' || isGiven(name)) return []
    const isNeeded = !field.optional && field.preset === undefined
    return isNeeded || asks[name] !== undefined ? [{ name, field, label: asks[name] }] : []
  })
}

/** The output that becomes the reading: the one that the check is of, else the first. */
export const outputOf = (check: ReadingCheck, calculation: AnyCalculation): { name: string; unit: string } => {
  const wanted = check.of !== undefined ? (calculation.outputs as Fields)[check.of] : undefined
  const [name, field] = wanted ? [check.of!, wanted] : Object.entries(calculation.outputs as Fields)[0]!
  if (field.kind !== 'number') throw new Error(`${calculation.id} does not give a number for ${check.id}`)
  return { name, unit: field.unit }
}
