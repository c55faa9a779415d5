import { blobTypes, type BlobAnswer } from '../../wire/blobs.ts'
import { blobSize, insertBlob, isNamed, readBlob } from '../database/blobs.ts'
import { readDevice, spendQuota } from '../database/devices.ts'
import { Refused } from '../http/refused.ts'
import { sha256 } from '../keys.ts'
import type { Handler } from './given.ts'

/** First bytes of JPEG, PNG and WebP; anything else is no photo, whatever its name says. */
const typeOf = (bytes: Uint8Array): (typeof blobTypes)[number] | undefined => {
  const head = Buffer.from(bytes.buffer, bytes.byteOffset, Math.min(16, bytes.byteLength))
  if (head.subarray(0, 3).equals(Buffer.from([0xff, 0xd8, 0xff]))) return 'image/jpeg'
  if (head.subarray(0, 8).equals(Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]))) return 'image/png'
  if (head.toString('latin1', 0, 4) === 'RIFF' && head.toString('latin1', 8, 12) === 'WEBP') return 'image/webp'
  return undefined
}

export const putBlob: Handler<'putBlob'> = async ({ parts, c, device, params, bytes }) => {
  if (c.req.header('content-length') === undefined) throw new Refused('lengthRequired')
  if (sha256(bytes) !== params.sha256) throw new Refused('hash')
  if (!(await isNamed(parts.database.sql, params.sha256))) throw new Refused('notFound', { detail: 'entry' })
  const answer: BlobAnswer = { sha256: params.sha256, bytes: bytes.byteLength }
  if (await blobSize(parts.database.sql, params.sha256)) return answer
  const type = typeOf(bytes)
  if (!type) throw new Refused('mediaType', { detail: blobTypes.join(' ') })
  const now = parts.clock()
  await parts.database.transact(async (tx) => {
    const row = await readDevice(tx, device.dev)
    if (!row) throw new Refused('unauthorised')
    const spent = await spendQuota(tx, row, { day: Math.floor(now / 86_400_000), bytes: bytes.byteLength })
    if (spent > parts.limits.dailyBytes) throw new Refused('quota')
    await insertBlob(tx, { sha256: params.sha256, bytes: bytes.byteLength, type, data: Buffer.from(bytes), dev: device.dev, recv_at: now })
  })
  return answer
}

export const getBlob: Handler<'getBlob'> = async ({ parts, c, params }) => {
  if (c.req.method === 'HEAD') {
    const size = await blobSize(parts.database.sql, params.sha256)
    if (!size) throw new Refused('notFound')
    return new Response(null, { headers: { 'Content-Type': size.type, 'Content-Length': String(size.bytes) } })
  }
  const blob = await readBlob(parts.database.sql, params.sha256)
  if (!blob) throw new Refused('notFound')
  const headers = { 'Content-Type': blob.type, 'Cache-Control': 'private, max-age=31536000, immutable' }
  return new Response(new Uint8Array(blob.data), { headers })
}
