import type { StoreFaultCode } from '../device/faults.ts'

/** What ails the store on this phone, as long as it lasts: said on every screen. `blocked`: another window holds an older version open. */
export type Trouble = StoreFaultCode | 'blocked' | 'unreadable'
