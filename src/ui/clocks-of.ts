import type { Clocks } from '../rounds/timer.ts'
import type { Phone } from './app-context.ts'

/** Both clocks at this instant. The life of the page is named by when it began, which no other life of it shares. */
export const clocksOf = ({ clock }: Phone): Clocks => ({ wall: clock.now(), mono: clock.mono(), session: String(performance.timeOrigin) })
