import * as z from 'zod/mini'

/**
 * Ids in a lab plan are short words chosen by the laboratory: `neg-1`, `neg-1-fix-ph`. They become keys of plain objects, where
 * `constructor` (alone of the names that this pattern lets through) would find what every object has.
 */
const word = z.string().check(z.regex(/^(?!constructor$)[a-z0-9][a-z0-9-]{0,63}$/))

export const machineId = word.brand<'MachineId'>()
export const stationId = word.brand<'StationId'>()
export const checkId = word.brand<'CheckId'>()
export const materialId = word.brand<'MaterialId'>()
export const methodId = word.brand<'MethodId'>()
export const formulaId = word.brand<'FormulaId'>()
export const cautionId = word.brand<'CautionId'>()
export const personId = word.brand<'PersonId'>()
export const shiftId = word.brand<'ShiftId'>()

export type MachineId = z.infer<typeof machineId>
export type StationId = z.infer<typeof stationId>
export type CheckId = z.infer<typeof checkId>
export type MaterialId = z.infer<typeof materialId>
export type MethodId = z.infer<typeof methodId>
export type FormulaId = z.infer<typeof formulaId>
export type CautionId = z.infer<typeof cautionId>
export type PersonId = z.infer<typeof personId>
export type ShiftId = z.infer<typeof shiftId>
