import { useEffect, useRef, useState } from 'preact/hooks'
import { secondsToWait, startTimer, type Timer } from '../../rounds/timer.ts'
import { useApp, useWords } from '../app-context.ts'
import { buzz } from '../buzz.ts'
import { clocksOf } from '../clocks-of.ts'
import { TimerRing } from '../parts/timer-ring.tsx'
import { useWakeLock } from '../wake-lock.ts'

const tickMilliseconds = 200

/** The time an instrument needs before its number counts: started by the hand that put it in, felt when it is over, deaf to a clock that is set meanwhile. */
export const Settle = ({ seconds, timer, onStart }: { seconds: number; timer: Timer | undefined; onStart(timer: Timer): void }) => {
  const { phone } = useApp()
  const words = useWords().round.check.settle
  const [, redraw] = useState(0)
  const left = timer ? secondsToWait(timer, clocksOf(phone)) : seconds
  const running = timer !== undefined && left > 0
  const wasRunning = useRef(false)
  useWakeLock(running)
  useEffect(() => {
    if (wasRunning.current && timer && !running) buzz('timerDone')
    wasRunning.current = running
    if (!running) return
    const ticks = setInterval(() => redraw((count) => count + 1), tickMilliseconds)
    return () => clearInterval(ticks)
  }, [running])
  return (
    <button type="button" class={`settle${timer && !running ? ' over' : ''}`} onClick={() => onStart(startTimer(seconds, clocksOf(phone)))}>
      <TimerRing small seconds={seconds} secondsLeft={left} name={words.left} />
      <span aria-live="polite">{timer === undefined ? words.start : running ? words.left : words.over}</span>
    </button>
  )
}
