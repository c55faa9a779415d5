import * as z from 'zod/mini'
import { entryId, type EntryId } from '../record/ids.ts'

/** Tells the other tabs and the service worker which entries came in or changed; they read them from the store themselves. */
export interface News {
  tell(ids: readonly EntryId[]): void
  listen(listener: (ids: EntryId[]) => void): () => void
  close(): void
}

const message = z.strictObject({ entries: z.array(entryId) })

export const createNews = (name = 'bathkeeper-entries'): News => {
  const channel = new BroadcastChannel(name)
  return {
    tell: (ids) => {
      if (ids.length) channel.postMessage({ entries: ids })
    },
    listen(listener) {
      const heard = (event: { data: unknown }): void => {
        const parsed = message.safeParse(event.data)
        if (parsed.success) listener(parsed.data.entries)
      }
      channel.addEventListener('message', heard)
      return () => channel.removeEventListener('message', heard)
    },
    close: () => channel.close(),
  }
}
