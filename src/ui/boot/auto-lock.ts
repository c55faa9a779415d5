import { openExceptions, phaseAt } from '../../projections/exceptions.ts'
import type { App } from '../app-context.ts'

const idleMilliseconds = 5 * 60_000

/** A phone that lies about goes back to nobody; while a bath is mixing its timer stays in sight. */
export const watchIdle = ({ person, lab, phone }: App): (() => void) => {
  let touchedAt = phone.clock.mono()
  const touch = (): void => {
    touchedAt = phone.clock.mono()
  }
  const events = ['pointerdown', 'keydown', 'visibilitychange'] as const
  for (const event of events) document.addEventListener(event, touch, { passive: true })
  const timer = setInterval(() => {
    if (person.value === null || phone.clock.mono() - touchedAt < idleMilliseconds) return
    const now = phone.clock.now()
    if (!openExceptions(lab.value.state.exceptions).some((it) => phaseAt(it, now) === 'mixing')) person.value = null
  }, 10_000)
  return () => {
    clearInterval(timer)
    for (const event of events) document.removeEventListener(event, touch)
  }
}
