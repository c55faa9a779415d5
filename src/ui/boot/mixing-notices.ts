import { effect } from '@preact/signals'
import { mixingUntil, openExceptions } from '../../projections/exceptions.ts'
import type { App } from '../app-context.ts'

/** Longer than a browser's timer can count. */
const longestWait = 2 ** 31 - 1

/** Tells that a bath has mixed when the app is not in sight, where the person has allowed notices. */
export const watchMixing = ({ lab, plan, words, phone }: App, registration: () => ServiceWorkerRegistration | undefined): (() => void) => {
  const timers = new Map<string, ReturnType<typeof setTimeout>>()
  const clear = (): void => {
    for (const timer of timers.values()) clearTimeout(timer)
    timers.clear()
  }
  const stop = effect(() => {
    clear()
    for (const exception of openExceptions(lab.value.state.exceptions)) {
      const wait = mixingUntil(exception) - phone.clock.now()
      if (wait <= 0 || wait > longestWait) continue
      timers.set(
        exception.id,
        setTimeout(() => {
          if (document.visibilityState === 'visible' || !('Notification' in globalThis) || Notification.permission !== 'granted') return
          const check = plan.value?.plan.checks.find(({ id }) => id === exception.check)
          void registration()?.showNotification(words.value.now.round.recheck(check?.name ?? ''), { tag: exception.id, data: { path: `/exception/${exception.id}` } })
        }, wait),
      )
    }
  })
  return () => {
    clear()
    stop()
  }
}
