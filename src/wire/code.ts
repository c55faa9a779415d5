/**
 * One-time codes: 128 bits in the fragment of an address (`https://host/#enrol=…`, base64url, 22 characters), or ten characters of
 * Crockford's base 32 (50 bits) to key by hand, shown in two fives.
 */
const crockford = '0123456789ABCDEFGHJKMNPQRSTVWXYZ'

/** As it is compared and signed: hyphens and spaces gone, and in the short form capitals, O read as 0, I and L as 1. */
export const plainCode = (given: string): string => {
  const bare = given.trim().replace(/\s/g, '')
  if (bare.length >= 20) return bare
  return bare.replace(/-/g, '').toUpperCase().replace(/O/g, '0').replace(/[IL]/g, '1')
}

/** Ten characters out of at least seven random bytes. */
export const shortCode = (random: Uint8Array): string => {
  let bits = 0n
  for (const byte of random.subarray(0, 7)) bits = (bits << 8n) | BigInt(byte)
  return Array.from({ length: 10 }, (_, place) => crockford[Number((bits >> BigInt(place * 5)) & 31n)]!).join('')
}

export const shownCode = (plain: string): string => `${plain.slice(0, 5)}-${plain.slice(5)}`

/** The part of an address after `#` that carries a code. */
export const enrolFragment = (code: string): string => `#enrol=${code}`
export const codeInFragment = (fragment: string): string | undefined => /^#enrol=([A-Za-z0-9_-]{10,64})$/.exec(fragment)?.[1]
