import { pushInBackground } from '../src/device/background-push.ts'
import { createClock } from '../src/device/clock.ts'
import { webLocks } from '../src/device/locks.ts'
import { createNews } from '../src/device/news.ts'

declare let self: ServiceWorkerGlobalScope

/** Rejects when it should be tried again, which is what makes the browser call again; what else stopped it is left for the page to say. */
export const sendInBackground = async (): Promise<void> => {
  const news = createNews()
  try {
    const outcome = await webLocks().ifFree('sync', () =>
      pushInBackground({ clock: createClock(), fetch: (path, init) => self.fetch(path, init), onSent: (ids) => news.tell(ids) }),
    )
    if (outcome === 'later') throw new Error('later')
  } finally {
    news.close()
  }
}
