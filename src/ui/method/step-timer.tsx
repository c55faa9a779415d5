import { useEffect, useRef } from 'preact/hooks'
import { useWords } from '../app-context.ts'
import { buzz } from '../buzz.ts'
import { useCountdown } from '../countdown.ts'
import { clockText, TimerRing } from '../parts/timer-ring.tsx'

/** Time that a step needs: started by hand, felt when it is over. It holds nobody up. */
export const StepTimer = ({ seconds, since, onStart }: { seconds: number; since: number | undefined; onStart(): void }) => {
  const words = useWords().method.timer
  const left = Math.min(seconds, useCountdown(since === undefined ? undefined : since + seconds * 1000) / 1000)
  const isRunning = since !== undefined && left > 0
  const wasRunning = useRef(false)
  useEffect(() => {
    if (wasRunning.current && !isRunning) buzz('timerDone')
    wasRunning.current = isRunning
  }, [isRunning])
  return (
    <button type="button" class={`step-timer${since !== undefined && !isRunning ? ' over' : ''}`} onClick={onStart}>
      <TimerRing seconds={seconds} secondsLeft={since === undefined ? seconds : left} name={words.left} />
      <strong aria-live="polite">{since === undefined ? words.start(clockText(seconds)) : isRunning ? words.left : `${words.over} · ${words.again}`}</strong>
    </button>
  )
}
