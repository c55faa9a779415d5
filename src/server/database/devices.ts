import type { DeviceState } from '../../wire/messages.ts'
import type { Sql, Tx } from './database.ts'
import type { DeviceRow } from './tables.ts'

export const readDevice = (sql: Sql, dev: string): Promise<DeviceRow | undefined> =>
  sql.selectFrom('devices').selectAll().where('dev', '=', dev).executeTakeFirst()

export const readDevices = (sql: Sql): Promise<DeviceRow[]> => sql.selectFrom('devices').selectAll().orderBy('enrolled_at').orderBy('dev').execute()

export const devicesNamed = (sql: Sql, devs: readonly string[]): Promise<DeviceRow[]> =>
  devs.length ? sql.selectFrom('devices').selectAll().where('dev', 'in', devs).execute() : Promise.resolve([])

export const insertDevice = async (tx: Sql, row: DeviceRow): Promise<void> => {
  await tx.insertInto('devices').values(row).execute()
}

export const setDeviceState = async (tx: Sql, dev: string, state: DeviceState): Promise<void> => {
  await tx.updateTable('devices').set({ state }).where('dev', '=', dev).execute()
}

export const setDeviceReach = async (
  tx: Tx,
  dev: string,
  reach: Pick<DeviceRow, 'last_seq' | 'last_hash' | 'quota_day' | 'quota_bytes'>,
): Promise<void> => {
  await tx.updateTable('devices').set(reach).where('dev', '=', dev).execute()
}

/** Adds to what a device has sent today, and says how much that is now. */
export const spendQuota = async (tx: Tx, device: DeviceRow, given: { day: number; bytes: number }): Promise<number> => {
  const before = device.quota_day === given.day ? device.quota_bytes : 0
  const quota = { quota_day: given.day, quota_bytes: before + given.bytes }
  await tx.updateTable('devices').set(quota).where('dev', '=', device.dev).execute()
  return quota.quota_bytes
}

export const noteHeard = async (sql: Sql, dev: string, at: number): Promise<void> => {
  await sql.updateTable('devices').set({ heard_at: at }).where('dev', '=', dev).execute()
}

export const noteReport = async (sql: Sql, dev: string, report: string, at: number): Promise<void> => {
  await sql.updateTable('devices').set({ report, report_at: at, heard_at: at }).where('dev', '=', dev).execute()
}
