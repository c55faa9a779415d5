import { mkdirSync } from 'node:fs'
import { hostname } from 'node:os'
import { X509Certificate } from 'node:crypto'
import { pathToFileURL } from 'node:url'
import { readSettings } from '../server/settings.ts'
import { constraintsOf, makeAuthority } from '../server/tls/authority.ts'
import { authorityFiles, hasAuthority, putAside, readAuthority, readAuthorityCertificate, renewLeaf, writeAuthority } from '../server/tls/authority-files.ts'
import { addressForPhones, lanAddresses, machineNames } from '../server/tls/machine-names.ts'
import { namesOf, untilMs } from '../server/tls/certified.ts'
import { parseNetwork, type Network } from '../server/tls/network.ts'
import { authorityKept, authorityMade, badName, certificateUsage, keyElsewhere } from './certificate/words.ts'
import { BadRequest, endWith } from './problem.ts'

const dnsName = /^(?=.{1,253}$)[a-z0-9]([a-z0-9-]{0,61}[a-z0-9])?(\.[a-z0-9]([a-z0-9-]{0,61}[a-z0-9])?)*$/

/** Names and addresses from the command line, those of this machine, and itself. */
const constraintsFrom = (given: readonly string[]): { dns: string[]; networks: Network[] } => {
  const machine = machineNames()
  const dns: string[] = []
  const networks: Network[] = []
  for (const one of given) {
    const network = parseNetwork(one)
    if (network) networks.push(network)
    else if (dnsName.test(one.toLowerCase())) dns.push(one.toLowerCase())
    else throw new BadRequest(badName(one))
  }
  const own = machine.addresses.flatMap((address) => parseNetwork(address) ?? [])
  const seen = new Map([...networks, ...own].map((network) => [`${network.text}/${network.bits}`, network]))
  return { dns: [...new Set([...dns, ...machine.dns])], networks: [...seen.values()] }
}

/** Makes what is lacking in the data folder, and says what to do with it. */
export const certificate = async (words: readonly string[], { folder, port }: { folder: string; port: number }): Promise<string> => {
  if (words.includes('--help')) return certificateUsage
  if (words.some((word) => word.startsWith('--') && word !== '--new')) throw new BadRequest(certificateUsage)
  const given = words.filter((word) => word !== '--new')
  const constraints = constraintsFrom(given)
  const files = authorityFiles(folder)
  const isThere = hasAuthority(files)
  const isNew = !isThere || words.includes('--new')
  if (!isNew && given.length > 0) throw new BadRequest(authorityKept(constraintsOf({ cert: readAuthorityCertificate(files) })))
  const now = Date.now()
  if (isNew) {
    const made = await makeAuthority({ name: `Bathkeeper of ${hostname()}, ${new Date(now).toISOString().slice(0, 10)}`, constraints, now })
    mkdirSync(folder, { recursive: true })
    if (isThere) putAside(files, new Date(now).toISOString().replaceAll(':', '-'))
    writeAuthority(files, made)
  }
  const authority = readAuthority(files)
  if (!authority) throw new BadRequest(keyElsewhere(files.key))
  const leaf = await renewLeaf(files, authority, { machine: machineNames(), now })
  const [issuer, own] = [new X509Certificate(authority.cert), new X509Certificate(leaf.cert)]
  const names = namesOf(own)
  return authorityMade({
    folder: files.folder, fingerprint: issuer.fingerprint256, names: [...names.dns, ...names.addresses],
    until: { authority: new Date(untilMs(issuer)), leaf: new Date(untilMs(own)) },
    address: `https://${addressForPhones(names, lanAddresses()) ?? 'localhost'}:${port}`,
  })
}

const main = async (): Promise<void> => console.log(await certificate(process.argv.slice(2), readSettings(process.env)))

if (process.argv[1] && import.meta.url === pathToFileURL(process.argv[1]).href)
  main().catch(endWith)
