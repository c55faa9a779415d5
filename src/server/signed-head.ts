import type { Head } from '../record/kinds/sign-off.ts'
import { headText } from '../wire/signed-texts.ts'
import type { Reach } from './database/head.ts'
import type { ServerKey } from './keys.ts'

export const signedHead = (key: ServerKey, given: { epoch: string; reach: Reach; now: number }): Head => {
  const head = { epoch: given.epoch, ...given.reach, time: new Date(given.now).toISOString() }
  return { ...head, sig: key.sign(headText(head)) }
}
