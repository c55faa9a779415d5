import { existsSync } from 'node:fs'
import { readFile } from 'node:fs/promises'
import { X509Certificate } from 'node:crypto'
import type { Clock } from '../clock.ts'
import { constraintsOf, namesToCertify, type Pair } from './authority.ts'
import { readAuthority, readAuthorityCertificate, readLeaf, renewLeaf, type AuthorityFiles } from './authority-files.ts'
import { BadCertificate, checkPair, namesOf, untilMs } from './certified.ts'
import type { Names } from './machine-names.ts'
import { addressKey } from './network.ts'

/** Where the server's certificate comes from. `load` gives what is to be served by now; throws `BadCertificate`. */
export interface CertificateSource {
  load(): Promise<Pair>
  /** PEM of the laboratory's own authority, for phones to trust. */
  authorityCertificate(): string | undefined
}

/** A certificate and key of the laboratory's own, which somebody else renews. */
export const givenFiles = (files: { cert: string; key: string }): CertificateSource => ({
  load: async () => {
    for (const file of [files.cert, files.key]) if (!existsSync(file)) throw new BadCertificate('missing', file)
    const pair = { cert: await readFile(files.cert, 'utf8'), key: await readFile(files.key, 'utf8') }
    checkPair(pair, files)
    return pair
  },
  authorityCertificate: () => undefined,
})

export const renewBeforeMs = 30 * 86_400_000

const lacks = (has: Names, wanted: Names): boolean => {
  const [dns, addresses] = [new Set(has.dns), new Set(has.addresses.map(addressKey))]
  return wanted.dns.some((name) => !dns.has(name)) || wanted.addresses.some((address) => !addresses.has(addressKey(address)))
}

/** The laboratory's own authority: makes the certificate anew a month before it runs out, and when this machine has another name or address. */
export const ownAuthority = (files: AuthorityFiles, given: { clock: Clock; machine: () => Names }): CertificateSource => {
  const isDue = (leaf: Pair, authority: Pair): boolean => {
    const [certificate, issuer] = [new X509Certificate(leaf.cert), new X509Certificate(authority.cert)]
    // At the authority's own end nothing is won by another certificate under it.
    const runsOut = untilMs(certificate) - given.clock() < renewBeforeMs && untilMs(certificate) < untilMs(issuer)
    return runsOut || lacks(namesOf(certificate), namesToCertify(constraintsOf(authority), given.machine()))
  }
  return {
    load: async () => {
      const authority = readAuthority(files)
      if (!authority) return readLeaf(files)
      const renewed = (): Promise<Pair> => renewLeaf(files, authority, { machine: given.machine(), now: given.clock() })
      try {
        const leaf = readLeaf(files)
        return isDue(leaf, authority) ? await renewed() : leaf
      } catch (error) {
        if (error instanceof BadCertificate) return renewed()
        throw error
      }
    },
    authorityCertificate: () => readAuthorityCertificate(files),
  }
}
