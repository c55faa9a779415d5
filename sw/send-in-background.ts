import { createClock } from '../src/device/clock.ts'
import { createIdbStore } from '../src/device/idb-store.ts'
import { webLocks } from '../src/device/locks.ts'
import { createNews } from '../src/device/news.ts'
import { openExchange } from '../src/device/open-phone.ts'
import { isLasting } from '../src/device/problems.ts'
import { readStorage, storageReport } from '../src/device/storage.ts'

declare let self: ServiceWorkerGlobalScope
declare const __APP_VERSION__: string

/**
 * One exchange with no page needed. Rejects when it should be tried again, which is what makes the browser call again; what only
 * people can mend is left for the page to say.
 */
export const sendInBackground = async (): Promise<void> => {
  const quiet = (): void => undefined
  const store = createIdbStore({ onBlocked: quiet, onLost: quiet, onUnreadable: quiet })
  const news = createNews()
  try {
    const { run } = openExchange({
      store,
      clock: createClock(),
      fetch: (path, init) => self.fetch(path, init),
      about: async () => ({ ...storageReport(await readStorage(self.navigator.storage)), app: __APP_VERSION__ }),
      onEntries: (changed) => news.tell(changed.map(({ entry }) => entry.id)),
      onFault: quiet,
    })
    const done = await webLocks().ifFree('sync', run)
    if (done?.problem && !isLasting(done.problem)) throw new Error(done.problem.code)
  } finally {
    news.close()
    await store.close()
  }
}
