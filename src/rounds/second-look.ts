import type { ReadingCheck } from '../plan/check.ts'
import type { CheckNow } from '../projections/checks.ts'
import { resultOf } from '../science/evaluate.ts'
import { readingScreen } from '../science/reading/screen.ts'

/** Why a value deserves a second look before it is kept. It is never refused. */
export interface SecondLook {
  /** What the recent readings say it should be near. */
  usual: number
  /** The same figures with the point moved, where that would be in line. */
  slip?: number
}

/** Undefined where the value is in line, or where there are too few readings to say. */
export const secondLook = (check: ReadingCheck, now: CheckNow | undefined, value: number): SecondLook | undefined => {
  const history = (now?.recent ?? []).flatMap((mark) => (mark.value === undefined ? [] : [mark.value]))
  const screened = resultOf(readingScreen, { history, value, resolution: check.step })
  if (screened.plausible !== false || screened.median === null) return undefined
  return { usual: screened.median, ...(screened.slippedPoint === null ? {} : { slip: screened.slippedPoint }) }
}
