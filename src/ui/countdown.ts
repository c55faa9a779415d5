import { useEffect, useState } from 'preact/hooks'
import { useApp } from './app-context.ts'

const tickMilliseconds = 200

/** Milliseconds until an instant, on the clock that mixing runs on: neither a wall clock that is set nor a screen that is opened anew changes them. */
export const useCountdown = (until: number | undefined): number => {
  const { phone } = useApp()
  const [, redraw] = useState(0)
  useEffect(() => {
    if (until === undefined) return
    const timer = setInterval(() => redraw((count) => count + 1), tickMilliseconds)
    return () => clearInterval(timer)
  }, [until])
  return until === undefined ? 0 : phone.clock.left(until)
}
