export { openDB } from 'idb'
