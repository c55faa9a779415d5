import * as z from 'zod/mini'
import { machineId, stationId } from './ids.ts'

export const stationKind = z.enum([
  'feed', 'elevator', 'drive', 'developer', 'stop', 'rinse', 'fixing', 'wash', 'squeegee', 'dryer', 'takeOff', 'strip', 'silverCell',
  'replenisher', 'plant', 'room', 'mixing', 'solvent', 'instruments', 'effluent', 'stores',
])
export type StationKind = z.infer<typeof stationKind>

/** A quantity of a substance as the calculations take it. */
export const constituent = z.strictObject({
  substance: z.string(),
  form: z.optional(z.string()),
  gramsPerLitre: z.number().check(z.minimum(0)),
})

export const bath = z.strictObject({
  litres: z.number().check(z.gt(0)),
  /** Room above the working level before the overflow lip. */
  headroomLitres: z.number().check(z.minimum(0)),
  circulationLitresPerMinute: z.number().check(z.gt(0)),
  /** Of the liquid in the tank, upright walls taken for granted: on one square metre a millimetre is a litre. Without it a level in millimetres has no litres. */
  surfaceSquareMetres: z.optional(z.number().check(z.gt(0), z.maximum(100))),
  /** What the acid–base engine takes the bath to be made of. */
  constituents: z.array(constituent),
})
export type Bath = z.infer<typeof bath>

export const station = z.strictObject({
  id: stationId,
  name: z.string().check(z.minLength(1), z.maxLength(40)),
  /** At most seven letters, for the drawing of the film's path. */
  short: z.string().check(z.minLength(1), z.maxLength(7)),
  kind: stationKind,
  /** Length of film in this place; absent where no film runs (plant, mixing, silver cell). */
  pathMetres: z.optional(z.number().check(z.gt(0))),
  bath: z.optional(bath),
})
export type Station = z.infer<typeof station>

export const machine = z.strictObject({
  id: machineId,
  name: z.string().check(z.minLength(1), z.maxLength(40)),
  stock: z.enum(['negative', 'positive']),
  /** `panchromatic` stock bears no light at all: no screen near open film. */
  light: z.enum(['panchromatic', 'orthochromatic', 'blueSensitive']),
  gaugeMillimetres: z.union([z.literal(35), z.literal(16), z.literal(65), z.literal(8)]),
  aimMetresPerMinute: z.number().check(z.gt(0)),
  /** Film stored in the elevator, which feeds the machine while a splice is made. */
  reserveMetres: z.optional(z.number().check(z.gt(0))),
  /** In the order of the film's path; places off the path (plant, silver cell) after it. */
  stations: z.array(station).check(z.minLength(1)),
})
export type Machine = z.infer<typeof machine>
