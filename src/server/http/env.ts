import type { DeviceRow } from '../database/tables.ts'
import type { Client } from './address.ts'

/** What the steps before a route leave for it. */
export interface Env {
  Variables: {
    client: Client
    /** The body's bytes as they came; a device has signed them. */
    bytes: Uint8Array
    device: DeviceRow
    /** The supervisor whose presence was proven. */
    supervisor: string
    /** Table name of the route, for metrics and log. */
    routeName: string
  }
}
