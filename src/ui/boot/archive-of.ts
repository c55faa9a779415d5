import * as z from 'zod/mini'
import { readDeviceName } from '../../device/device-name.ts'
import type { Phone as DevicePhone } from '../../device/open-phone.ts'
import { readWitness } from '../../device/pull.ts'
import { recordText } from '../../device/record-export.ts'
import { bringBack, lookThroughRecord } from '../../device/record-import.ts'
import { createWebVerifier, publicHalf, sha256OfBytes } from '../../device/web-seal.ts'
import { Lab } from '../../projections/lab.ts'
import { deviceId, hash } from '../../record/ids.ts'
import { publicKey } from '../../wire/receipt.ts'
import type { Archive, KnownDevice } from '../archive.ts'

const knownDevice = z.looseObject({ dev: deviceId, name: z.string(), key: publicKey, seed: z.optional(hash) })
const page = 200

/** The phone's store as the shift's page asks it. Fetched when a shift is signed, proved or carried away. */
export const archiveOf = (phone: DevicePhone): Archive => {
  const { store, book, sender, door, identity } = phone
  const archive: Archive = {
    exchange: async () => (await sender.sendNow()).problem === undefined,
    whole: async () => {
      const lab = new Lab()
      lab.add((await book.since(0)).map(({ entry, h, gseq, recvAt }) => ({ entry, h, gseq, recvAt, status: 'valid' })))
      return lab
    },
    chain: async (dev, from, to) => {
      const entries: Awaited<ReturnType<Archive['chain']>> = []
      for (let at = from; at <= to; ) {
        const rows = await store.chain(dev, at, Math.min(page, to - at + 1))
        const last = rows.at(-1)?.entry.seq
        if (last === undefined) break
        for (const { entry, h, sig, status } of rows) entries.push({ entry, h, sig, ...(status === 'valid' ? {} : { uncounted: status }) })
        at = last + 1
      }
      return entries.filter(({ entry }) => entry.seq <= to)
    },
    devices: async () => {
      const others = await Promise.all((await store.keys('devices')).map(async (dev) => knownDevice.safeParse(await store.take('devices', dev)).data))
      const known = new Map<string, KnownDevice>()
      for (const it of others) if (it) known.set(it.dev, { dev: it.dev, name: it.name, key: it.key, ...(it.seed ? { seed: it.seed } : {}) })
      const own = await identity()
      if (own) known.set(own.receipt.dev, { dev: own.receipt.dev, name: await readDeviceName(store), key: await publicHalf(own.keys), seed: own.receipt.seed })
      return [...known.values()]
    },
    server: async () => {
      const own = await identity()
      const head = await readWitness(store)
      return own && { epoch: own.receipt.epoch, key: own.receipt.serverKey, ...(head ? { head } : {}) }
    },
    photo: async (sha256) => {
      const here = await store.blob(sha256)
      if (here) return new Blob([here.bytes], { type: 'image/jpeg' })
      const asked = await door.open('getBlob', { places: { sha256 } })
      if (!asked.ok) return undefined
      const bytes = await asked.answer.arrayBuffer()
      // What came is what the entry names, or it is nothing.
      return (await sha256OfBytes(new Uint8Array(bytes))) === sha256 ? new Blob([bytes], { type: asked.answer.headers.get('Content-Type') ?? 'image/jpeg' }) : undefined
    },
    sha256: (text) => sha256OfBytes(new TextEncoder().encode(text)),
    record: async (asked) => {
      const server = await archive.server()
      if (!server) throw new Error('the record was to be exported on a phone that knows no server')
      return recordText(store, { ...asked, serverKey: server.key, devices: await archive.devices() })
    },
    lookThrough: async (text, onProgress) =>
      lookThroughRecord(text, { store, verifier: createWebVerifier(), devices: await archive.devices(), own: (await identity())?.receipt.dev, epoch: (await store.cursor())?.epoch, ...(onProgress ? { onProgress } : {}) }),
    bringBack: (found, onProgress) => bringBack(found, door, onProgress),
  }
  return archive
}
