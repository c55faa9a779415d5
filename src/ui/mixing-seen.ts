import { mixingUntil, type Exception } from '../projections/exceptions.ts'
import type { Phone } from './app-context.ts'

/** The instant at which an exception is seen: by the clock that its mixing runs on, which nobody can set; else by the laboratory's. */
export const seenAt = ({ clock }: Phone, exception: Exception | undefined): number => {
  const until = exception ? mixingUntil(exception) : 0
  return until > 0 ? until - clock.left(until) : clock.now()
}
