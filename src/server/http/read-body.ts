import type { Context } from 'hono'
import type { Limits } from '../parts.ts'
import { Refused } from './refused.ts'

/** A lab plan inside an entry inside a push nests thirteen deep, and no entry may nest more than twenty; a request that goes on for ever is meant to exhaust the parser. */
export const deepestJson = 24

type Patience = Pick<Limits, 'bodySilenceMs' | 'bodyMs'>

/** The next piece of a body. One that comes drop by drop, to keep a place taken, is given up. */
const nextChunk = async (reader: ReadableStreamDefaultReader<Uint8Array>, waitMs: number): Promise<Uint8Array | undefined> => {
  let timer: NodeJS.Timeout | undefined
  const tooSlow = new Promise<never>((_, reject) => {
    timer = setTimeout(() => reject(new Refused('timeout')), waitMs)
  })
  try {
    return (await Promise.race([reader.read(), tooSlow])).value
  } finally {
    clearTimeout(timer)
  }
}

/** The bytes of a request, stopped at the limit while they come in, whatever its Content-Length says. */
export const readBytes = async (c: Context, mostBytes: number, { bodySilenceMs, bodyMs }: Patience): Promise<Uint8Array> => {
  const encoding = c.req.header('content-encoding')
  if (encoding !== undefined && encoding !== 'identity') throw new Refused('encoded')
  const announced = Number(c.req.header('content-length') ?? 0)
  if (announced > mostBytes) throw new Refused('tooLarge', { detail: String(mostBytes) })
  const stream = c.req.raw.body
  if (!stream) return new Uint8Array()
  const reader = stream.getReader()
  const until = performance.now() + bodyMs
  const chunks: Uint8Array[] = []
  let length = 0
  for (;;) {
    const chunk = await nextChunk(reader, Math.max(0, Math.min(bodySilenceMs, until - performance.now())))
    if (!chunk) return Buffer.concat(chunks, length)
    length += chunk.byteLength
    if (length > mostBytes) throw new Refused('tooLarge', { detail: String(mostBytes) })
    chunks.push(chunk)
  }
}

/** How deep brackets nest outside of strings: cheaper than to let the parser find out. */
const depthOf = (text: string): number => {
  let [depth, deepest, inString] = [0, 0, false]
  for (let place = 0; place < text.length; place += 1) {
    const code = text.charCodeAt(place)
    if (inString) {
      if (code === 0x5c) place += 1
      else if (code === 0x22) inString = false
    } else if (code === 0x22) inString = true
    else if (code === 0x7b || code === 0x5b) deepest = Math.max(deepest, (depth += 1))
    else if (code === 0x7d || code === 0x5d) depth -= 1
  }
  return deepest
}

const holdsProto = (value: unknown): boolean =>
  typeof value === 'object' && value !== null && (Object.hasOwn(value, '__proto__') || Object.values(value).some(holdsProto))

/** A body that is JSON in UTF-8. What it says is for a schema to judge. */
export const parseJson = (c: Context, bytes: Uint8Array): unknown => {
  if (!/^application\/json(;|$)/i.test(c.req.header('content-type') ?? '')) throw new Refused('mediaType', { detail: 'application/json' })
  let text: string
  try {
    text = new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(bytes)
  } catch {
    throw new Refused('badRequest', { detail: 'utf-8' })
  }
  if (depthOf(text) > deepestJson) throw new Refused('badRequest', { detail: 'depth' })
  let value: unknown
  try {
    value = JSON.parse(text)
  } catch {
    throw new Refused('badRequest', { detail: 'json' })
  }
  // A schema that copies properties would set a prototype with it.
  if (/__proto__|\\u005f/i.test(text) && holdsProto(value)) throw new Refused('badRequest', { detail: '__proto__' })
  return value
}
