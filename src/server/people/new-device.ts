import type { DeviceId, Hash } from '../../record/ids.ts'
import type { PublicKey } from '../../record/seal.ts'
import type { DeviceState } from '../../wire/messages.ts'
import type { Receipt } from '../../wire/receipt.ts'
import { digitsOf, receiptText, seedText, thumbprintText } from '../../wire/signed-texts.ts'
import type { DeviceRow } from '../database/tables.ts'
import { sha256, type ServerKey } from '../keys.ts'

export const deviceRow = (given: {
  dev: string
  name: string
  key: PublicKey
  state: DeviceState
  epoch: string
  now: number
}): DeviceRow => {
  const thumbprint = sha256(thumbprintText(given.key))
  const seed = sha256(seedText({ dev: given.dev, epoch: given.epoch, thumbprint }))
  return {
    dev: given.dev, name: given.name, key_x: given.key.x, key_y: given.key.y, thumbprint, state: given.state, epoch: given.epoch, seed,
    last_seq: 0, last_hash: seed, enrolled_at: given.now, heard_at: given.now, report: null, report_at: null, quota_day: 0, quota_bytes: 0,
  }
}

export const receiptFor = (key: ServerKey, row: DeviceRow, person?: string): Receipt => ({
  v: 1,
  dev: row.dev as DeviceId,
  epoch: row.epoch,
  serverKey: key.publicKey,
  seed: row.seed as Hash,
  digits: digitsOf(row.thumbprint as Hash),
  state: row.state === 'enrolled' ? 'enrolled' : 'waiting',
  ...(person === undefined ? {} : { person }),
  sig: key.sign(receiptText({ dev: row.dev, epoch: row.epoch, seed: row.seed as Hash })),
})
