import { useEffect, useRef, useState } from 'preact/hooks'
import { useApp } from './app-context.ts'

const tickMilliseconds = 200

/**
 * Milliseconds until an instant, counted on the clock that never runs backwards, so that a corrected wall clock cannot shorten it. When the
 * page is seen again the wall clock is asked anew: the other one may have stood still while the phone slept.
 */
export const useCountdown = (until: number | undefined): number => {
  const { phone } = useApp()
  const anchor = useRef({ left: 0, mono: 0, until: Number.NaN })
  const [, redraw] = useState(0)
  const setAnchor = (): void => {
    if (until !== undefined) anchor.current = { left: until - phone.clock.now(), mono: phone.clock.mono(), until }
  }
  if (until !== undefined && anchor.current.until !== until) setAnchor()
  useEffect(() => {
    if (until === undefined) return
    const timer = setInterval(() => redraw((count) => count + 1), tickMilliseconds)
    const seen = (): void => {
      if (document.visibilityState === 'visible') setAnchor()
    }
    document.addEventListener('visibilitychange', seen)
    return () => {
      clearInterval(timer)
      document.removeEventListener('visibilitychange', seen)
    }
  }, [until])
  return until === undefined ? 0 : anchor.current.left - (phone.clock.mono() - anchor.current.mono)
}
