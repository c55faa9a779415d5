import * as z from 'zod/mini'
import type { Box } from '../../reader/picture.ts'
import type { Phone } from '../app-context.ts'

const share = z.number().check(z.minimum(0), z.maximum(1))

/** The display of one check's instrument as this phone last read it: where its figures stand in the picture, in shares of it, their decimals, and what they are made of. */
export const display = z.strictObject({
  guide: z.strictObject({ x: share, y: share, width: share, height: share }),
  decimals: z.optional(z.number()),
  kind: z.optional(z.enum(['segments', 'other'])),
})
export type Display = z.infer<typeof display>
export type Guide = Display['guide']

/** A display at arm's length, the phone upright. */
export const usualGuide: Guide = { x: 0.15, y: 0.36, width: 0.7, height: 0.26 }
const least = { width: 0.12, height: 0.06 }

const keyOf = (check: string): string => `display:${check}`

export const recallDisplay = async (drafts: Phone['drafts'], check: string): Promise<Display | undefined> => display.safeParse(await drafts.get(keyOf(check))).data

export const rememberDisplay = (drafts: Phone['drafts'], check: string, it: Display): Promise<void> => drafts.put(keyOf(check), it)

const within = (value: number, low: number, high: number): number => Math.min(high, Math.max(low, value))

export const moved = (guide: Guide, dx: number, dy: number): Guide => ({ ...guide, x: within(guide.x + dx, 0, 1 - guide.width), y: within(guide.y + dy, 0, 1 - guide.height) })

/** Pulled at its lower right corner. */
export const resized = (guide: Guide, dx: number, dy: number): Guide => ({
  ...guide,
  width: within(guide.width + dx, least.width, 1 - guide.x),
  height: within(guide.height + dy, least.height, 1 - guide.y),
})

export const boxOf = ({ x, y, width, height }: Guide, picture: { width: number; height: number }): Box => ({
  x: x * picture.width,
  y: y * picture.height,
  width: width * picture.width,
  height: height * picture.height,
})

export const decimalsShown = (text: string): number => text.split('.')[1]?.length ?? 0
