import { StoreFault } from './faults.ts'
import type { ShelfStore } from './store.ts'

/**
 * Writes durably and reads back, before a round can start. A private window that keeps nothing, or storage switched off, shows here.
 * A private window that keeps until it is closed does not: browsers hide the difference, and only the refused `persist` hints at it.
 */
export const probeStore = async (store: ShelfStore, mark: string): Promise<void> => {
  let back: unknown
  try {
    await store.keep('singles', 'probe', mark)
    back = await store.take('singles', 'probe')
  } catch (thrown) {
    if (thrown instanceof StoreFault) throw thrown
    throw new StoreFault('unavailable', 'probe', thrown)
  }
  if (back !== mark) throw new StoreFault('unavailable', 'probe')
}
