import type { ShelfStore } from '../store.ts'
import { completed, strict, type Session } from './session.ts'

export const idbShelves = ({ use, save }: Session): ShelfStore => ({
  take: (shelf, key) => use(shelf, (database) => database.get(shelf, key)),

  keep: (shelf, key, value) =>
    save(shelf, async (database) => {
      const transaction = database.transaction(shelf, 'readwrite', strict)
      await completed(transaction, (ask) => ask(transaction.store.put(value, key)))
    }),

  revise: (shelf, key, change) =>
    save(shelf, async (database) => {
      const transaction = database.transaction(shelf, 'readwrite', strict)
      const value = change(await transaction.store.get(key))
      await completed(transaction, (ask) => ask(transaction.store.put(value, key)))
      return value
    }),

  remove: (shelf, key) =>
    save(shelf, async (database) => {
      const transaction = database.transaction(shelf, 'readwrite', strict)
      await completed(transaction, (ask) => ask(transaction.store.delete(key)))
    }),

  keys: (shelf) => use(shelf, (database) => database.getAllKeys(shelf)),
})
