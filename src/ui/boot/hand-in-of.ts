import { checkUnsentFile } from '../../device/export.ts'
import type { Phone as DevicePhone } from '../../device/open-phone.ts'
import { knownDevice } from '../../device/pull.ts'
import { createWebVerifier } from '../../device/web-seal.ts'
import type { HandedIn } from '../app-context.ts'

/** Looks through a file of unsent entries and hands it in. Fetched when somebody chooses one. */
export const handInOf = async ({ door, store, sender }: DevicePhone, text: string): Promise<HandedIn> => {
  const checked = await checkUnsentFile(text, createWebVerifier(), async (dev) => knownDevice.safeParse(await store.take('devices', dev)).data?.key)
  if (!checked.ok) {
    const { problem } = checked
    if (problem.code === 'notAFile') return { ok: false, why: 'notAFile', detail: problem.detail }
    return { ok: false, why: 'changed', ...(problem.code === 'entry' ? { detail: String(problem.seq) } : {}) }
  }
  const { file } = checked
  const answered = await door.call('import', { body: file, timeoutMs: 120_000 })
  if (!answered.ok) {
    const { problem } = answered
    if (problem.code !== 'refused') return { ok: false, why: 'offline' }
    const { error, detail } = problem.refusal
    if (error === 'notFound') return { ok: false, why: 'unknownPhone' }
    if (error === 'unauthorised') return { ok: false, why: 'changed' }
    return { ok: false, why: 'refused', detail: detail === undefined ? error : `${error} ${detail}` }
  }
  sender.nudge('live')
  const { acks, error } = answered.answer
  return { ok: true, phone: file.name, count: file.entries.length, taken: acks.length, aside: error?.code === 'fork', ...(error ? { why: error.code } : {}) }
}
