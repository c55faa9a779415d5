import { hostname, networkInterfaces } from 'node:os'
import { isIP } from 'node:net'

/** Names that a certificate is for: DNS names in small letters, and addresses as text. */
export interface Names {
  dns: readonly string[]
  addresses: readonly string[]
}

/** Networks inside this machine (containers, virtual machines, tunnels): no phone can come in by them. */
const inside = /^(docker|br-|veth|virbr|vmnet|vboxnet|vnic|cni|flannel|tun|tap|wg|utun|zt|lo)/

/**
 * Addresses by which phones on the laboratory's network reach this machine. Of IPv6 none: most systems change theirs every day, and a
 * certificate cannot follow. Who has a steady one names it.
 */
export const lanAddresses = (): string[] =>
  Object.entries(networkInterfaces())
    .filter(([name]) => !inside.test(name))
    .flatMap(([, list]) => list ?? [])
    .filter(({ family, internal, address }) => family === 'IPv4' && !internal && !address.startsWith('169.254.'))
    .map(({ address }) => address)

/** What this machine is called: its host name, the same under `.local` (as phones find it by multicast DNS), and itself. */
export const machineNames = (): Names => {
  const name = hostname().toLowerCase().replace(/[^a-z0-9.-]/g, '')
  const own = name === '' || name === 'localhost' ? [] : name.includes('.') ? [name] : [name, `${name}.local`]
  return { dns: [...own, 'localhost'], addresses: [...lanAddresses(), '127.0.0.1', '::1'] }
}

/** The address to print for phones: one that the certificate has, the first of this machine before others. */
export const addressForPhones = (certified: Names, own: readonly string[]): string | undefined => {
  const isLoopback = (name: string): boolean => name === 'localhost' || name === '::1' || name.startsWith('127.')
  const address = own.find((it) => certified.addresses.includes(it))
  const name = certified.dns.find((it) => !isLoopback(it) && !it.includes('*'))
  const found = address ?? name ?? certified.addresses.find((it) => !isLoopback(it))
  return found !== undefined && isIP(found) === 6 ? `[${found}]` : found
}
