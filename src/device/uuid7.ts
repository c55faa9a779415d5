import type { EntryId } from '../record/ids.ts'

/** UUIDv7 (RFC 9562, 5.7): 48 bits of milliseconds since 1970, then 74 random bits between the marks of version and variant. */
export const uuid7 = (milliseconds: number, random: Uint8Array): EntryId => {
  const bytes = new Uint8Array(16)
  let time = BigInt(Math.max(0, Math.floor(milliseconds)))
  for (let place = 5; place >= 0; place--) {
    bytes[place] = Number(time & 255n)
    time >>= 8n
  }
  bytes.set(random.subarray(0, 10), 6)
  bytes[6] = (bytes[6]! & 0x0f) | 0x70
  bytes[8] = (bytes[8]! & 0x3f) | 0x80
  const hex = Array.from(bytes, (byte) => byte.toString(16).padStart(2, '0')).join('')
  return `${hex.slice(0, 8)}-${hex.slice(8, 12)}-${hex.slice(12, 16)}-${hex.slice(16, 20)}-${hex.slice(20)}` as EntryId
}
