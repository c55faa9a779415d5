import type { Envelope } from '../../record/entry.ts'

const skewMsAllowed = 120_000
const backwardsMsAllowed = 2_000

/** Where an entry stands in its device's time. */
export interface Moment {
  sess: string
  atMs: number
}

export const momentOf = ({ sess, at }: Pick<Envelope, 'sess' | 'at'>): Moment => ({ sess, atMs: Date.parse(at) })

/** What is odd about an entry's time. It is only said: nothing is rewritten, and projections go by the corrected time. */
export const timeFlags = (given: Envelope, before: Moment | undefined): ('skew' | 'backwards')[] => {
  const flags: ('skew' | 'backwards')[] = []
  if (given.skew && Math.abs(given.skew.ms) > skewMsAllowed) flags.push('skew')
  const now = momentOf(given)
  if (before?.sess === now.sess && before.atMs - now.atMs > backwardsMsAllowed) flags.push('backwards')
  return flags
}
