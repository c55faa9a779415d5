import type { ReportRequest } from '../wire/report.ts'

/** The part of the browser's storage manager that is used; `persist` can be asked by a page only. */
export interface StoragePort {
  persisted?(): Promise<boolean>
  persist?(): Promise<boolean>
  estimate?(): Promise<{ usage?: number; quota?: number }>
}

export interface StorageState {
  /** Null where the browser does not tell. When false, the browser may clear the record, iOS after seven days without use. */
  persisted: boolean | null
  usedBytes?: number
  quotaBytes?: number
  /** Four fifths of what the browser allows are used. */
  isNearlyFull: boolean
}

const nearlyFull = 0.8

export const readStorage = async (port: StoragePort | undefined): Promise<StorageState> => {
  const [persisted, estimate] = await Promise.all([port?.persisted?.() ?? null, port?.estimate?.() ?? {}])
  const { usage, quota } = estimate as { usage?: number; quota?: number }
  return {
    persisted,
    ...(usage === undefined ? {} : { usedBytes: usage }),
    ...(quota === undefined ? {} : { quotaBytes: quota }),
    isNearlyFull: usage !== undefined && quota !== undefined && quota > 0 && usage / quota >= nearlyFull,
  }
}

/** Asks that the record be kept for good. Browsers answer by themselves, some only once the app is installed: the answer is shown. */
export const askToPersist = async (port: StoragePort | undefined): Promise<boolean | null> => {
  if (!port?.persist) return null
  return (await port.persisted?.()) || port.persist()
}

/** As the report to the server has it. */
export const storageReport = ({ persisted, usedBytes, quotaBytes }: StorageState): Pick<ReportRequest, 'persisted' | 'storage'> => ({
  persisted,
  ...(usedBytes === undefined || quotaBytes === undefined ? {} : { storage: { usedBytes, quotaBytes } }),
})
