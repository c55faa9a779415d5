import { useEffect, useRef } from 'preact/hooks'
import { useWords } from '../app-context.ts'
import { buzz } from '../buzz.ts'
import { useCountdown } from '../countdown.ts'
import { TimerRing } from '../parts/timer-ring.tsx'
import { useWakeLock } from '../wake-lock.ts'

/** The time an instrument needs before its number counts: started by the hand that put it in, felt when it is over. */
export const Settle = ({ seconds, since, onStart }: { seconds: number; since: number | undefined; onStart(): void }) => {
  const words = useWords().round.check.settle
  const left = useCountdown(since === undefined ? undefined : since + seconds * 1000) / 1000
  const running = since !== undefined && left > 0
  const wasRunning = useRef(false)
  useWakeLock(running)
  useEffect(() => {
    if (wasRunning.current && since !== undefined && !running) buzz('timerDone')
    wasRunning.current = running
  }, [running])
  return (
    <button type="button" class={`settle${since !== undefined && !running ? ' over' : ''}`} onClick={onStart}>
      <TimerRing small seconds={seconds} secondsLeft={since === undefined ? seconds : left} name={words.left} />
      <span aria-live="polite">{since === undefined ? words.start : running ? words.left : words.over}</span>
    </button>
  )
}
