import type { Lab } from '../../src/projections/lab.ts'
import type { Hash } from '../../src/record/ids.ts'
import type { Archive } from '../../src/ui/archive.ts'
import type { Log } from './log.ts'

/** The record below the fold, without seals: what the screens show of it is real but for the signatures. */
export const archive = (lab: () => Lab, log: Log): Archive => ({
  exchange: async () => false,
  whole: async () => lab(),
  chain: async (dev, from, to) => log.entries.filter(({ entry }) => entry.dev === dev && entry.seq >= from && entry.seq <= to).map(({ entry, h }) => ({ entry, h, sig: '' })),
  devices: async () => [{ dev: '00000000000000d1' as never, name: 'Machine room 1', key: { kty: 'EC', crv: 'P-256', x: '', y: '' } }],
  server: async () => undefined,
  photo: async () => undefined,
  record: async () => undefined,
  lookThrough: async () => ({ ok: false, problem: { code: 'notJson' } }),
  bringBack: async () => ({ brought: 0, refused: [] }),
  sha256: async (text) => {
    const digest = new Uint8Array(await crypto.subtle.digest('SHA-256', new TextEncoder().encode(text)))
    return Array.from(digest, (byte) => byte.toString(16).padStart(2, '0')).join('') as Hash
  },
})
