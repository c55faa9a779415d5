import * as z from 'zod/mini'
import type { Sealed } from '../record/entry.ts'
import { hash, type DeviceId, type Hash } from '../record/ids.ts'
import { NotCanonical } from '../record/canonical.ts'
import { quickParse } from '../record/fits.ts'
import { sealProblem, type PublicKey, type Verifier } from '../record/seal.ts'
import { largestPull } from '../wire/largest.ts'
import { pullAnswer, pulled, type Pulled } from '../wire/messages.ts'
import { chained } from '../wire/chained.ts'
import { headText, linkText } from '../wire/signed-texts.ts'
import type { Doubt } from './doubt.ts'
import { correctedTime, type Kept } from './kept.ts'
import type { SendProblem } from './problems.ts'
import type { Cursor } from './store.ts'

/**
 * A page as it is read here: each entry is looked at by itself, so that one of a later version is kept unread instead of keeping out
 * all that come after it.
 */
export const lenientPage = z.extend(pullAnswer, { entries: z.array(z.unknown()).check(z.maxLength(largestPull)) })
export type LenientPage = z.infer<typeof lenientPage>

const unreadEntry = z.looseObject({ entry: chained, h: hash, sig: z.string(), gseq: z.number(), recvAt: z.number(), sh: hash })

const readPulled = quickParse(pulled)
const readEntry = (raw: unknown): Pulled | undefined => {
  const known = readPulled(raw)
  if (known.success) return known.data
  const unread = unreadEntry.safeParse(raw)
  if (!unread.success) return undefined
  const { entry, h, sig, gseq, recvAt, sh } = unread.data
  return { status: 'opaque', entry, h, sig, gseq, recvAt, sh }
}

export type VerifiedPage = { ok: true; entries: Kept[]; next: Cursor } | { ok: false; problem: SendProblem }

/**
 * Checks a page against what this phone holds already: the server's chain links from the cursor on, its head is signed with the key
 * of the receipt and stands at the end of the chain. An entry whose own hash or signature does not fit is kept, marked, and counted
 * nowhere: the device did not say it, and the others must not be held up by it.
 */
export const verifyPage = async (
  page: LenientPage,
  given: { from: Cursor; serverKey: PublicKey; keyOf(dev: DeviceId): PublicKey | undefined; verifier: Verifier },
): Promise<VerifiedPage> => {
  const { from, serverKey, keyOf, verifier } = given
  const broken = (gseq: number, why: 'link' | 'head' | 'headSignature'): VerifiedPage => ({ ok: false, problem: { code: 'recordBroken', gseq, why } })
  if (!(await verifier.verify(serverKey, headText(page.head), page.head.sig))) return broken(page.head.gseq, 'headSignature')
  if (page.head.epoch !== from.epoch) return broken(page.head.gseq, 'head')
  if (page.before !== from.sh || page.head.gseq < from.after) return broken(from.after, 'link')
  const read = page.entries.map(readEntry)
  // All at once: a browser hashes and verifies on other threads than this.
  const looked = await Promise.all(
    read.map(async (one, index) => {
      if (!one) return undefined
      const before = index === 0 ? from.sh : (read[index - 1]?.sh as Hash)
      const [link, doubt] = await Promise.all([
        verifier.sha256(linkText({ before, gseq: one.gseq, h: one.h, recvAt: one.recvAt })), doubtOf(one, keyOf(one.entry.dev), verifier),
      ])
      return { one, link, doubt }
    }),
  )
  let { after, sh } = from
  const entries: Kept[] = []
  for (const it of looked) {
    if (!it) return { ok: false, problem: { code: 'strange', status: 200, detail: `entry after ${after}` } }
    const { one, link, doubt } = it
    if (one.gseq <= after || one.sh !== link) return broken(one.gseq, 'link')
    ;({ gseq: after, sh } = one)
    entries.push(keptFrom(one, from.epoch, doubt))
  }
  if (page.next !== after) return broken(page.next, 'link')
  if (page.head.gseq === after && page.head.sh !== sh) return broken(after, 'head')
  return { ok: true, entries, next: { epoch: from.epoch, after, sh } }
}

const doubtOf = async ({ entry, h, sig }: Pulled, key: PublicKey | undefined, verifier: Verifier): Promise<Doubt | undefined> => {
  if (!key) return 'unknownDevice'
  try {
    return await sealProblem({ entry, h, sig } as Sealed, key, verifier)
  } catch (thrown) {
    if (thrown instanceof NotCanonical) return 'hash'
    throw thrown
  }
}

const keptFrom = (one: Pulled, epoch: string, doubt: Doubt | undefined): Kept => {
  const { h, sig, gseq, recvAt, flags } = one
  const common = { h: h as Hash, sig, gseq, recvAt, epoch, time: correctedTime(one.entry, recvAt), ...(flags ? { flags } : {}) }
  if (doubt) return { status: 'quarantined', entry: one.entry, ...common, why: doubt }
  if (one.status === 'valid') return { status: one.status, entry: one.entry, ...common }
  return { status: one.status, entry: one.entry, ...common, ...(one.why === undefined ? {} : { why: one.why }) }
}
