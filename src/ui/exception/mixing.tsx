import { useEffect, useRef } from 'preact/hooks'
import type { Exception } from '../../projections/exceptions.ts'
import { useWords } from '../app-context.ts'
import { buzz } from '../buzz.ts'
import { useCountdown } from '../countdown.ts'
import { LinkButton } from '../parts/button.tsx'
import { CallMe } from '../parts/call-me.tsx'
import { TimerRing } from '../parts/timer-ring.tsx'
import { useWakeLock } from '../wake-lock.ts'

/** The bath turns over; what is read before is not the bath. The end comes from the entry of the dose, so it outlives the phone. */
export const Mixing = ({ exception, until, check, href }: { exception: Exception; until: number; check: string; href: string }) => {
  const words = useWords()
  const left = useCountdown(until) / 1000
  const dose = exception.doses.at(-1)
  const seconds = dose ? (until - dose.time) / 1000 : left
  const wasRunning = useRef(left > 0)
  useWakeLock(left > 0)
  useEffect(() => {
    if (wasRunning.current && left <= 0) {
      wasRunning.current = false
      buzz('timerDone')
    }
  })
  return (
    <div class="mixing">
      <TimerRing seconds={seconds} secondsLeft={left} name={words.exception.mixing} />
      <p class="lead">{words.exception.mixingMore}</p>
      {left <= 0 ? <LinkButton kind="go" href={href}>{words.now.round.recheck(check)}</LinkButton> : <CallMe />}
    </div>
  )
}
