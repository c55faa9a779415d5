import * as z from 'zod/mini'
import { check } from './check.ts'
import { formula } from './formula.ts'
import { checkId, methodId, personId, shiftId } from './ids.ts'
import { machine } from './machine.ts'
import { material } from './material.ts'
import { ownCaution } from './own-caution.ts'

export const person = z.strictObject({
  id: personId,
  name: z.string().check(z.minLength(1), z.maxLength(60)),
  role: z.enum(['operator', 'supervisor']),
})
export type Person = z.infer<typeof person>

const wallTime = z.string().check(z.regex(/^([01]\d|2[0-3]):[0-5]\d$/))

export const shift = z.strictObject({ id: shiftId, name: z.string(), from: wallTime, to: wallTime })
export type Shift = z.infer<typeof shift>

export const method = z.strictObject({
  id: methodId,
  name: z.string(),
  /** Card that is read before the first step. */
  caution: z.optional(z.string()),
  /** A step may have a card of its own, which is read before it is shown. */
  steps: z.array(z.strictObject({ says: z.string(), seconds: z.optional(z.number()), caution: z.optional(z.string()) })),
  /** The calculation that turns the burette into a strength, with the inputs that the method fixes. */
  calculation: z.optional(z.string()),
  given: z.optional(z.record(z.string(), z.union([z.number(), z.string()]))),
  /** What an input is called at this bench, where the calculation's own words are too general. */
  asks: z.optional(z.record(z.string(), z.string())),
  /** The end point is taken off a curve of volume and meter. */
  endPoint: z.optional(z.literal('curve')),
  /** Inputs that are the strength of a titrant, by the check that standardises it. It is out of date when that check is. */
  titrants: z.optional(z.record(z.string(), checkId)),
  /** How far two determinations may lie apart, in the unit of the check. */
  repeatabilityLimit: z.optional(z.number().check(z.gt(0))),
})
export type Method = z.infer<typeof method>

export const displayUnits = z.strictObject({
  temperature: z.enum(['°C', '°F']),
  volume: z.enum(['L', 'US gal', 'UK gal']),
  mass: z.enum(['g', 'oz']),
  length: z.enum(['m', 'ft']),
})
export type DisplayUnits = z.infer<typeof displayUnits>

/** The description of one laboratory. Everything on the screens comes from it; nothing of a laboratory is in the code. */
export const labPlan = z.strictObject({
  format: z.literal('bathkeeper-plan'),
  version: z.literal(1),
  name: z.string().check(z.minLength(1), z.maxLength(80)),
  /** An invented laboratory to learn with: said on every screen, wiped in one tap and one confirmation. */
  demo: z.optional(z.boolean()),
  timeZone: z.string(),
  units: displayUnits,
  people: z.array(person).check(z.minLength(1)),
  shifts: z.array(shift).check(z.minLength(1)),
  machines: z.array(machine).check(z.minLength(1)),
  checks: z.array(check),
  materials: z.array(material),
  methods: z.array(method),
  /** What the laboratory mixes by itself. */
  formulas: z.optional(z.array(formula)),
  /** Cautions in the laboratory's own words. */
  cautions: z.optional(z.array(ownCaution)),
  emergency: z.strictObject({
    calls: z.array(z.strictObject({ who: z.string(), number: z.string() })),
    eyewash: z.string(),
    assembly: z.string(),
  }),
  /** Who countersigns the release of an exception that a lone night shift had to close itself. */
  onCall: z.optional(personId),
})
export type LabPlan = z.infer<typeof labPlan>
