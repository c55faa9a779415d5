import { networkBytes, type Network } from './network.ts'

/**
 * The extension that keeps an authority to the names it was made for: whoever steals its key can make certificates for this server, and for
 * nothing else that the phones trust. Written as DER by hand (RFC 5280, 4.2.1.10; X.690), because the certificate library has no such extension:
 *
 *   NameConstraints ::= SEQUENCE { permittedSubtrees [0] GeneralSubtrees, excludedSubtrees [1] GeneralSubtrees OPTIONAL }
 *   GeneralSubtree  ::= SEQUENCE { base GeneralName }     dNSName [2] IA5String     iPAddress [7] OCTET STRING, address and mask
 */
export const nameConstraintsOid = '2.5.29.30'

export interface Constraints {
  dns: readonly string[]
  networks: readonly Network[]
}

const tags = { sequence: 0x30, permitted: 0xa0, excluded: 0xa1, dns: 0x82, address: 0x87 } as const

const der = (tag: number, ...contents: readonly Uint8Array[]): Uint8Array => {
  const { length } = Buffer.concat(contents)
  const size = length < 128 ? [length] : length < 256 ? [0x81, length] : [0x82, length >> 8, length & 255]
  return Buffer.concat([Uint8Array.from([tag, ...size]), ...contents])
}

const everyAddress: readonly Network[] = [{ text: '0.0.0.0', family: 4, bits: 0 }, { text: '::', family: 6, bits: 0 }]

export const nameConstraints = ({ dns, networks }: Constraints): Uint8Array => {
  const subtree = (tag: number, base: Uint8Array): Uint8Array => der(tags.sequence, der(tag, base))
  const named = dns.map((name) => subtree(tags.dns, Buffer.from(name, 'ascii')))
  const addressed = networks.map((network) => subtree(tags.address, networkBytes(network)))
  // A form of name of which nothing is permitted would not be constrained at all.
  const excluded = networks.length ? [] : [der(tags.excluded, ...everyAddress.map((all) => subtree(tags.address, networkBytes(all))))]
  return der(tags.sequence, der(tags.permitted, ...named, ...addressed), ...excluded)
}

interface Element {
  tag: number
  content: Uint8Array
}

const elements = (bytes: Uint8Array): Element[] => {
  const found: Element[] = []
  for (let at = 0; at < bytes.length; ) {
    const [tag, first] = [bytes[at]!, bytes[at + 1]!]
    const sizeBytes = first < 128 ? 0 : first & 127
    const size = sizeBytes === 0 ? first : bytes.subarray(at + 2, at + 2 + sizeBytes).reduce((sum, byte) => sum * 256 + byte, 0)
    const from = at + 2 + sizeBytes
    found.push({ tag, content: bytes.subarray(from, from + size) })
    at = from + size
  }
  return found
}

const bitsOf = (mask: Uint8Array): number => mask.reduce((sum, byte) => sum + byte.toString(2).replaceAll('0', '').length, 0)

const addressText = (bytes: Uint8Array): string =>
  bytes.length === 4 ? bytes.join('.') : Array.from({ length: 8 }, (_, place) => ((bytes[2 * place]! << 8) | bytes[2 * place + 1]!).toString(16)).join(':')

/** What an authority of ours may certify, read back from its certificate. */
export const readNameConstraints = (value: Uint8Array): Constraints => {
  const [outer] = elements(value)
  const permitted = outer ? elements(outer.content).find(({ tag }) => tag === tags.permitted) : undefined
  const bases = permitted ? elements(permitted.content).flatMap(({ content }) => elements(content)) : []
  return {
    dns: bases.filter(({ tag }) => tag === tags.dns).map(({ content }) => Buffer.from(content).toString('ascii')),
    networks: bases
      .filter(({ tag }) => tag === tags.address)
      .map(({ content }) => {
        const half = content.length / 2
        return { text: addressText(content.subarray(0, half)), family: half === 4 ? 4 : 6, bits: bitsOf(content.subarray(half)) }
      }),
  }
}
