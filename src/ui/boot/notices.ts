import { effect } from '@preact/signals'
import { checkOf, machineOf } from '../../plan/find.ts'
import type { LabPlan } from '../../plan/lab-plan.ts'
import { callsAt, type Call } from '../../rounds/calls.ts'
import type { App } from '../app-context.ts'
import type { Words } from '../words/words.ts'

export interface Notice {
  /** A later notice of the same thing takes the place of the earlier. */
  tag: string
  title: string
  body?: string
  path: string
}

/** What a browser gives, where it gives it: a phone that cannot call still counts. */
export interface Calling {
  /** Somebody looks at the app: the screen says it, and nothing else need. */
  isSeen(): boolean
  show(notice: Notice): void
  /** How many things wait, on the app's icon. */
  badge(count: number): void
  after(milliseconds: number, work: () => void): () => void
}

/** Longer than a browser's timer can count. */
const longestWait = 2 ** 31 - 1
const namesShown = 3

/**
 * Calls a person to what falls due while the app is not in sight, once for each, and keeps the number on the icon. Until the browser puts the page to
 * sleep: nothing but a server's push could wake it, and a laboratory without a network has none.
 */
export const watchCalls = ({ lab, plan, words, phone }: Pick<App, 'lab' | 'plan' | 'words' | 'phone'>, calling: Calling): (() => void) => {
  let told: ReadonlySet<string> | undefined
  let cancel = (): void => undefined
  const look = (): void => {
    cancel()
    const inForce = plan.value?.plan
    if (!inForce) return
    const now = phone.clock.now()
    const { calls, nextAt } = callsAt(lab.value.state, inForce, now)
    calling.badge(calls.length)
    const fresh = told && !calling.isSeen() ? calls.filter(({ key }) => !told!.has(key)) : []
    for (const notice of noticesOf(fresh, calls, inForce, words.value)) calling.show(notice)
    told = new Set(calls.map(({ key }) => key))
    if (nextAt !== undefined) cancel = calling.after(Math.min(longestWait, Math.max(0, nextAt - now)), look)
  }
  const stop = effect(look)
  return () => {
    cancel()
    stop()
  }
}

/** One notice for each exception, and one for each machine with checks newly due, which counts all that are due there. */
const noticesOf = (fresh: readonly Call[], all: readonly Call[], plan: LabPlan, { notices }: Words): Notice[] => {
  const ofExceptions = fresh.flatMap(({ why, check, exception }): Notice[] =>
    why === 'due' || !exception ? [] : [{ tag: exception, title: notices[why](checkOf(plan, check).name), path: why === 'mixed' ? `/exception/${exception}` : `/check/${check}` }],
  )
  const machines = new Set(fresh.flatMap(({ why, machine }) => (why === 'due' ? [machine] : [])))
  const ofMachines = [...machines].map((id): Notice => {
    const due = all.filter(({ why, machine }) => why === 'due' && machine === id)
    const names = due.slice(0, namesShown).map(({ check }) => checkOf(plan, check).name)
    return { tag: `due:${id}`, title: notices.due(machineOf(plan, id).name, due.length), body: notices.more(names, due.length - names.length), path: '/round' }
  })
  return [...ofExceptions, ...ofMachines]
}

/** With what this browser has. Its words are fetched first: a pocket is not where the first screen is drawn. */
export const startCalls = async (app: App, registration: () => ServiceWorkerRegistration | undefined): Promise<() => void> => {
  await app.loadWords()
  return watchCalls(app, {
    isSeen: () => document.visibilityState === 'visible',
    show: ({ tag, title, body, path }) => {
      if (!('Notification' in globalThis) || Notification.permission !== 'granted') return
      void registration()?.showNotification(title, { tag, data: { path }, icon: '/icon-192.png', badge: '/icon-192.png', ...(body ? { body } : {}) })
    },
    badge: (count) => {
      // Refused where the app is not installed; then there is no icon to put it on.
      const set = count > 0 ? navigator.setAppBadge?.(count) : navigator.clearAppBadge?.()
      set?.catch(() => undefined)
    },
    after: (milliseconds, work) => {
      const timer = setTimeout(work, milliseconds)
      return () => clearTimeout(timer)
    },
  })
}
