import { createIdbStore } from '../src/device/idb-store.ts'
export { createIdbStore }
