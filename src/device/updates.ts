import type { Workbox } from 'workbox-window'
import { keepLaterMessage } from './background.ts'

/** The app's service worker as the page sees it. */
export interface Updates {
  /** For Background Sync and notices; undefined where the browser refuses service workers (plain http, unknown certificate). */
  registration(): ServiceWorkerRegistration | undefined
  /** Called when a new version is ready and waits; it takes over only when `apply` is called. */
  onWaiting(listener: () => void): void
  /** Takes the new version over and reloads. The page says when: never with a half-keyed reading or an open round. */
  apply(): void
  /** Asks the server whether there is a new version. Without a network nothing happens. */
  check(): Promise<void>
}

export interface UpdateParts {
  trustScript(url: string): string
  reload(): void
  /** Why there is no service worker, so that the page can say that it will not open without a network. */
  onRefused(cause: unknown): void
}

/** Registers /sw.js, under this name for ever, after the first screen is there. */
export const registerServiceWorker = async ({ trustScript, reload, onRefused }: UpdateParts): Promise<Updates> => {
  const waiting = new Set<() => void>()
  let workbox: Workbox | undefined
  let registration: ServiceWorkerRegistration | undefined
  let isWaiting = false
  try {
    const { Workbox } = await import('workbox-window')
    workbox = new Workbox(trustScript('/sw.js'))
    workbox.addEventListener('waiting', () => {
      isWaiting = true
      for (const listener of waiting) listener()
    })
    registration = await workbox.register({ immediate: true })
    void workbox.active.then((worker) => worker.postMessage({ type: keepLaterMessage }))
  } catch (cause) {
    onRefused(cause)
  }
  return {
    registration: () => registration,
    onWaiting(listener) {
      waiting.add(listener)
      if (isWaiting) listener()
    },
    apply() {
      workbox?.addEventListener('controlling', reload)
      workbox?.messageSkipWaiting()
    },
    async check() {
      try {
        await workbox?.update()
      } catch {
        // No network: asked again the next time.
      }
    },
  }
}
