import { BlockList, isIP } from 'node:net'

/** An address with the mask of the network that it stands for, as the bytes of a certificate's name constraint (RFC 5280, 4.2.1.10). */
export interface Network {
  text: string
  family: 4 | 6
  bits: number
}

/** `192.168.1.20`, `192.168.1.0/24`, `fd00::/64`; undefined for anything else. */
export const parseNetwork = (text: string): Network | undefined => {
  const [address = '', bits, ...more] = text.split('/')
  const family = isIP(address)
  if ((family !== 4 && family !== 6) || more.length > 0) return undefined
  const most = family === 4 ? 32 : 128
  const count = bits === undefined ? most : /^\d{1,3}$/.test(bits) ? Number(bits) : -1
  return count >= 0 && count <= most ? { text: address, family, bits: count } : undefined
}

export const addressBytes = (address: string): Uint8Array => {
  if (isIP(address) === 4) return Uint8Array.from(address.split('.').map(Number))
  // The last 32 bits may be written as an IPv4 address (RFC 4291, 2.2).
  const dotted = /^(.*:)(\d+)\.(\d+)\.(\d+)\.(\d+)$/.exec(address)
  const hex = (high: string | undefined, low: string | undefined): string => ((Number(high) << 8) | Number(low)).toString(16)
  const plain = dotted ? `${dotted[1]}${hex(dotted[2], dotted[3])}:${hex(dotted[4], dotted[5])}` : address
  const [head = '', tail] = plain.split('::')
  const left = head.split(':').filter(Boolean)
  const right = tail === undefined ? [] : tail.split(':').filter(Boolean)
  const groups = [...left, ...Array.from({ length: 8 - left.length - right.length }, () => '0'), ...right]
  return Uint8Array.from(groups.flatMap((group) => [Number.parseInt(group, 16) >> 8, Number.parseInt(group, 16) & 255]))
}

/** The same for every way to write one address: `::1` and `0:0:0:0:0:0:0:1`. */
export const addressKey = (address: string): string => Buffer.from(addressBytes(address)).toString('hex')

/** Address then mask, both with the host's bits at zero. */
export const networkBytes = ({ text, bits }: Network): Uint8Array => {
  const address = addressBytes(text)
  const mask = address.map((_, place) => (0xff00 >> Math.min(8, Math.max(0, bits - 8 * place))) & 255)
  return Uint8Array.from([...address.map((byte, place) => byte & mask[place]!), ...mask])
}

export const isWithin = (address: string, networks: readonly Network[]): boolean => {
  const family = isIP(address)
  const list = new BlockList()
  for (const network of networks) list.addSubnet(network.text, network.bits, network.family === 6 ? 'ipv6' : 'ipv4')
  return family !== 0 && list.check(address, family === 6 ? 'ipv6' : 'ipv4')
}
