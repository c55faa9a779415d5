import './timer-ring.css'

const round = 2 * Math.PI * 46

/** `4:05`, or `1:02:09` from an hour on. */
export const clockText = (seconds: number): string => {
  const whole = Math.max(0, Math.ceil(seconds))
  const two = (value: number): string => String(value).padStart(2, '0')
  const hours = Math.floor(whole / 3600)
  return hours ? `${hours}:${two(Math.floor((whole % 3600) / 60))}:${two(whole % 60)}` : `${Math.floor(whole / 60)}:${two(whole % 60)}`
}

/** Time that is left, as a ring that empties and as figures. The caller owns the clock. */
export const TimerRing = ({ secondsLeft, seconds, name, small }: { secondsLeft: number; seconds: number; name: string; small?: boolean }) => {
  const share = seconds > 0 ? Math.max(0, Math.min(1, secondsLeft / seconds)) : 0
  return (
    <div class={`timer-ring${small ? ' small' : ''}`} role="timer" aria-label={`${name} ${clockText(secondsLeft)}`}>
      <svg viewBox="0 0 100 100" aria-hidden="true" focusable="false">
        <circle cx="50" cy="50" r="46" />
        <circle class="left" cx="50" cy="50" r="46" stroke-dasharray={`${round * share} ${round}`} />
      </svg>
      <strong aria-hidden="true">{clockText(secondsLeft)}</strong>
    </div>
  )
}
