import { chmodSync, existsSync, mkdirSync, readFileSync, renameSync } from 'node:fs'
import { join } from 'node:path'
import { X509Certificate } from 'node:crypto'
import { writeWhole } from '../write-whole.ts'
import { constraintsOf, makeLeaf, namesToCertify, type Pair } from './authority.ts'
import { BadCertificate, checkPair } from './certified.ts'
import type { Names } from './machine-names.ts'

/** Where an authority of the laboratory's own keeps its files. `server.pem` holds certificate and key together, so that a renewal is one rename. */
export const authorityFiles = (folder: string) => {
  const at = join(folder, 'tls')
  return { folder: at, cert: join(at, 'authority.pem'), key: join(at, 'authority-key.pem'), leaf: join(at, 'server.pem') }
}
export type AuthorityFiles = ReturnType<typeof authorityFiles>

const certificatePart = /-----BEGIN CERTIFICATE-----[\s\S]+?-----END CERTIFICATE-----\n?/g
const keyPart = /-----BEGIN [A-Z ]*PRIVATE KEY-----[\s\S]+?-----END [A-Z ]*PRIVATE KEY-----\n?/

export const hasAuthority = (files: AuthorityFiles): boolean => existsSync(files.cert)

export const readAuthorityCertificate = (files: AuthorityFiles): string => readFileSync(files.cert, 'utf8')

/** The authority with its key; undefined where the key is kept elsewhere, and then nothing can be renewed here. */
export const readAuthority = (files: AuthorityFiles): Pair | undefined => {
  if (!existsSync(files.key)) return undefined
  const pair = { cert: readAuthorityCertificate(files), key: readFileSync(files.key, 'utf8') }
  checkPair(pair, files)
  return pair
}

export const writeAuthority = (files: AuthorityFiles, authority: Pair): void => {
  mkdirSync(files.folder, { recursive: true, mode: 0o700 })
  chmodSync(files.folder, 0o700)
  writeWhole(files.key, authority.key, 0o600)
  writeWhole(files.cert, authority.cert, 0o644)
}

/** Puts an earlier authority aside under a name with its time, for phones that still trust it. */
export const putAside = (files: AuthorityFiles, stamp: string): void => {
  for (const file of [files.cert, files.key, files.leaf]) if (existsSync(file)) renameSync(file, `${file}.${stamp}`)
}

export const readLeaf = (files: AuthorityFiles): Pair => {
  if (!existsSync(files.leaf)) throw new BadCertificate('missing', files.leaf)
  const text = readFileSync(files.leaf, 'utf8')
  const pair = { cert: (text.match(certificatePart) ?? []).join(''), key: keyPart.exec(text)?.[0] ?? '' }
  const certificate = checkPair(pair, { cert: files.leaf, key: files.leaf })
  if (!certificate.verify(new X509Certificate(readAuthorityCertificate(files)).publicKey)) throw new BadCertificate('forged', files.leaf)
  return pair
}

/** Makes the server's certificate anew, for what this machine is called by now. */
export const renewLeaf = async (files: AuthorityFiles, authority: Pair, given: { machine: Names; now: number }): Promise<Pair> => {
  const leaf = await makeLeaf(authority, { names: namesToCertify(constraintsOf(authority), given.machine), now: given.now })
  writeWhole(files.leaf, leaf.key + leaf.cert, 0o600)
  return leaf
}
