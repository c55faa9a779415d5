import type { EntryId } from '../record/ids.ts'

/** Tells the other tabs and the service worker which entries came in or changed; they read them from the store themselves. */
export interface News {
  tell(ids: readonly EntryId[]): void
  listen(listener: (ids: EntryId[]) => void): () => void
  close(): void
}

/** By hand, as the service worker has no schemas. An id that names nothing is simply not found. */
const idsIn = (message: unknown): EntryId[] => {
  const { entries } = (message ?? {}) as { entries?: unknown }
  return Array.isArray(entries) ? entries.filter((id): id is EntryId => typeof id === 'string') : []
}

export const createNews = (name = 'bathkeeper-entries'): News => {
  const channel = new BroadcastChannel(name)
  return {
    tell: (ids) => {
      if (ids.length) channel.postMessage({ entries: ids })
    },
    listen(listener) {
      const heard = (event: { data: unknown }): void => {
        const ids = idsIn(event.data)
        if (ids.length) listener(ids)
      }
      channel.addEventListener('message', heard)
      return () => channel.removeEventListener('message', heard)
    },
    close: () => channel.close(),
  }
}
