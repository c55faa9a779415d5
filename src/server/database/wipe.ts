import { chainStart } from '../../wire/signed-texts.ts'
import type { Tx } from './database.ts'

/** Everything of the laboratory, in the order that its references allow. The people stay, the caller says which. */
export const forgetEverything = async (tx: Tx, keep: { person: string }): Promise<void> => {
  for (const table of ['blob_refs', 'blobs', 'plans', 'asides', 'entries', 'codes', 'devices', 'nonces', 'log'] as const) {
    await tx.deleteFrom(table).execute()
  }
  await tx.deleteFrom('people').where('person', '!=', keep.person).execute()
  await tx.updateTable('record_head').set({ gseq: 0, sh: chainStart }).execute()
}
