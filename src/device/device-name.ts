import * as z from 'zod/mini'
import { shownName } from '../wire/messages.ts'
import type { ShelfStore } from './store.ts'

/** What people call this phone: keyed at enrolment, shown in the list of devices. */
export const readDeviceName = async (store: ShelfStore): Promise<string> => {
  const parsed = z.safeParse(shownName, await store.take('settings', 'deviceName'))
  return parsed.success ? parsed.data : 'Phone'
}

export const keepDeviceName = (store: ShelfStore, name: string): Promise<void> => store.keep('settings', 'deviceName', name)
