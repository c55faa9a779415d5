import type { BlobStore } from '../store.ts'
import type { Connection } from './connection.ts'
import { completed, strict, type Session } from './session.ts'

export const dropSentBlobs = (connection: Connection): Promise<number> =>
  connection.use('blobs', async (database) => {
    const transaction = database.transaction('blobs', 'readwrite', strict)
    const sent = await transaction.store.index('bySent').getAllKeys(1)
    await completed(transaction, (ask) => {
      for (const sha256 of sent) ask(transaction.store.delete(sha256))
    })
    return sent.length
  })

export const idbBlobs = ({ use, save }: Session): Omit<BlobStore, 'dropSentBlobs'> => ({
  keepBlob: (blob) =>
    save('blobs', async (database) => {
      const transaction = database.transaction('blobs', 'readwrite', strict)
      await completed(transaction, (ask) => ask(transaction.store.put(blob)))
    }),

  blob: (sha256) => use('blobs', (database) => database.get('blobs', sha256)),

  unsentBlobs: () => use('blobs', (database) => database.getAllKeysFromIndex('blobs', 'bySent', 0)),

  blobSent: (sha256) =>
    save('blobs', async (database) => {
      const transaction = database.transaction('blobs', 'readwrite', strict)
      const row = await transaction.store.get(sha256)
      await completed(transaction, (ask) => {
        if (row) ask(transaction.store.put({ ...row, sent: 1 }))
      })
    }),

  offerBlobsAgain: () =>
    save('blobs', async (database) => {
      const transaction = database.transaction('blobs', 'readwrite', strict)
      const rows = await transaction.store.index('bySent').getAll(1)
      await completed(transaction, (ask) => {
        for (const row of rows) ask(transaction.store.put({ ...row, sent: 0 }))
      })
      return rows.length
    }),
})
