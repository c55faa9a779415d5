import * as z from 'zod/mini'
import { checkId, methodId, personId, stationId } from './ids.ts'
import { limits } from './limits.ts'
import { machineState, schedule } from './schedule.ts'

/** Who set an aim, and when: a starting value of the trade, or the laboratory itself. Starting values stay labelled until replaced. */
export const setBy = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('startingValue'), source: z.string() }),
  z.strictObject({ kind: z.literal('laboratory'), person: personId, at: z.string() }),
])

/** What is read. `concentration` and `density` name the constituent or the step in `of`. */
export const quantity = z.enum([
  'temperature', 'temperatureDifference', 'pH', 'level', 'specificGravity', 'flow', 'replenishment', 'concentration', 'pressure',
  'pressureDrop', 'speed', 'duration', 'humidity', 'current', 'voltage', 'frequency', 'airSpeed', 'volume', 'mass', 'footage', 'residual', 'density',
])
export type Quantity = z.infer<typeof quantity>

const common = {
  id: checkId,
  station: stationId,
  name: z.string().check(z.minLength(1), z.maxLength(60)),
  /** What an experienced hand does to get a number that counts. */
  how: z.optional(z.string()),
  schedule,
  states: z.array(machineState).check(z.minLength(1)),
  /** Out of limits holds the machine at once, without waiting for a repeat: safety and mechanical checks. */
  immediateHold: z.boolean(),
  /** What keeps people safe where chemicals are poured: no acid is offered while one of these is overdue or not right. */
  safeguard: z.optional(z.enum(['eyewash', 'exhaust'])),
  /** Name of the instrument that this check proves: while it is overdue, that instrument's readings cannot be relied on. */
  calibrates: z.optional(z.string()),
  /** Stock in the open: the phone stays dark and the reading is keyed later with the time it was noted. */
  darkWork: z.optional(z.boolean()),
  setBy,
}

export const readingCheck = z.strictObject({
  ...common,
  kind: z.literal('reading'),
  quantity,
  of: z.optional(z.string()),
  unit: z.string(),
  /** The smallest step that the instrument shows: also the number of decimals on the pad. */
  step: z.number().check(z.gt(0)),
  limits,
  /** Beyond these the machine is held, once a repeat agrees; between action limit and these it is corrected while it runs. */
  holdBelow: z.optional(z.number()),
  holdAbove: z.optional(z.number()),
  instrument: z.strictObject({ name: z.string(), low: z.number(), high: z.number() }),
  settleSeconds: z.optional(z.number().check(z.minimum(0))),
  /** The other reading it is judged with: level with specific gravity, controller with thermometer. */
  pairedWith: z.optional(checkId),
  /** How far the two may differ, in the unit of both; absent where they are judged by their own limits. */
  pairedWithin: z.optional(z.number().check(z.minimum(0))),
  method: z.optional(methodId),
})
export type ReadingCheck = z.infer<typeof readingCheck>

export const lookCheck = z.strictObject({ ...common, kind: z.literal('look'), right: z.string(), wrong: z.string() })
export type LookCheck = z.infer<typeof lookCheck>

/** A step of the control strip. Log exposure may be relative: its increment belongs to the tablet, not to the program. */
export const stripStep = z.strictObject({
  name: z.string().check(z.regex(/^(?!constructor$)[^;,\s"'#][^;,"'#\t\r\n]{0,23}$/)),
  logExposure: z.optional(z.number().check(z.minimum(-10), z.maximum(10))),
})

export const stripCheck = z.strictObject({
  ...common,
  kind: z.literal('strip'),
  /**
   * Strip figures with limits: `baseFog`, `speed`, `gamma`, `averageGradient`, `dMax`, `contrast`, or the density of a step by its name.
   * Where a batch of strips has aims of its own, the limits lie as far about those.
   */
  figures: z.array(z.strictObject({ figure: z.string(), unit: z.string(), step: z.number(), limits })),
  /** The steps that are read, thinnest first; with log exposures they make a curve. Without steps the figures themselves are keyed. */
  steps: z.optional(z.array(stripStep).check(z.minLength(2), z.maxLength(60))),
  /** The definition by which gamma is taken: on one strip they differ by several per cent. The greatest slope, where none is named. */
  gamma: z.optional(
    z.strictObject({ by: z.enum(['greatestSlope', 'betweenDensities', 'printControl']), fromDensity: z.optional(z.number()), toDensity: z.optional(z.number()) }),
  ),
  /** How this film's gamma grows with time in this developer, γ = γ∞·(1 − e^(−κt)), and how many times faster it grows 10 °C warmer: fitted at the bench. */
  law: z.optional(
    z.strictObject({ gammaInfinity: z.number().check(z.gt(0)), ratePerMinute: z.number().check(z.gt(0)), coefficientPerTenCelsius: z.optional(z.number().check(z.gt(1), z.maximum(5))) }),
  ),
  /** Two steps whose difference stands for contrast. */
  contrast: z.optional(z.strictObject({ upper: z.string(), lower: z.string() })),
})
export type StripCheck = z.infer<typeof stripCheck>

export const check = z.discriminatedUnion('kind', [readingCheck, lookCheck, stripCheck])
export type Check = z.infer<typeof check>
