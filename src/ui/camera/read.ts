import * as z from 'zod/mini'
import type { Photo } from '../../device/photo.ts'
import type { GrayImage } from '../../reader/picture.ts'
import type { MeterReading } from '../../reader/reader.ts'
import { hash } from '../../record/ids.ts'

/** What the camera read and a person took, with the picture that shows it. Kept with the half-keyed number until it is saved. */
export const read = z.strictObject({
  text: z.string(),
  certain: z.boolean(),
  /** Places in `text` to look at. */
  doubtful: z.array(z.number()),
  cutOut: z.strictObject({ width: z.number(), height: z.number(), data: z.instanceof(Uint8Array) }),
  photo: z.strictObject({ sha256: hash, bytes: z.instanceof(ArrayBuffer), widthPixels: z.number(), heightPixels: z.number() }),
})
export interface Read {
  text: string
  certain: boolean
  doubtful: number[]
  cutOut: GrayImage
  photo: Photo
}

export const doubtfulPlaces = ({ doubts }: MeterReading): number[] => [...new Set(doubts.flatMap(({ at }) => (at === null ? [] : [at])))].sort((a, b) => a - b)

/** As it would be keyed: `.5` on the display is 0.5 on the pad. */
export const asKeyed = (text: string): string => text.replace(/^-?(?=\.)/, (minus) => `${minus}0`)

/** The doubtful places of what stands on the pad, one further where a nought was put before the point. */
export const shifted = ({ text, doubtful }: Read): number[] => {
  const added = asKeyed(text).length - text.length
  return doubtful.map((at) => (added && at >= text.indexOf('.') ? at + added : at))
}
