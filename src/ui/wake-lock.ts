import { useEffect } from 'preact/hooks'

/** Keeps the screen lit during a timed step, where the browser can; asked again when the page is seen again, as hiding it gives the lock up. */
export const useWakeLock = (wanted: boolean): void => {
  useEffect(() => {
    if (!wanted || !('wakeLock' in navigator)) return
    let lock: WakeLockSentinel | undefined
    let over = false
    const ask = (): void => {
      if (document.visibilityState !== 'visible') return
      navigator.wakeLock.request('screen').then(
        (given) => {
          lock = given
          if (over) void given.release()
        },
        // Refused to save power: the timer goes on all the same.
        () => undefined,
      )
    }
    ask()
    document.addEventListener('visibilitychange', ask)
    return () => {
      over = true
      document.removeEventListener('visibilitychange', ask)
      void lock?.release()
    }
  }, [wanted])
}
