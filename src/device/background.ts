/** Background Sync, where the browser has it: the service worker is woken to send what waits, even with no page open. */
export const sendTag = 'send'

/** What the page says to the service worker when it has drawn its first screen: now is the time for the files that no round begins with. */
export const keepLaterMessage = 'keepLater'

interface SyncManager {
  register(tag: string): Promise<void>
}

/** A wish, not a promise: browsers without it, or that refuse it, send when the app is next seen. */
export const askForBackgroundSend = async (registration: object | undefined): Promise<boolean> => {
  const sync = (registration as { sync?: SyncManager } | undefined)?.sync
  if (!sync) return false
  try {
    await sync.register(sendTag)
    return true
  } catch {
    return false
  }
}
