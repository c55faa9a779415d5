import { BlockList, isIP } from 'node:net'
import type { IncomingMessage } from 'node:http'
import type { Context } from 'hono'

export interface Client {
  address: string
  /** As the person's browser sees it, a proxy in front included. */
  isHttps: boolean
  host: string
}

const plainAddress = (text: string): string => {
  const bare = text.trim().replace(/^\[(.*)\](:\d+)?$/, '$1')
  const mapped = /^::ffff:(\d+\.\d+\.\d+\.\d+)$/i.exec(bare)
  return mapped?.[1] ?? bare.replace(/%.*$/, '')
}

/** Reads `10.0.0.0/8`, `192.168.1.20`, `loopback`. Throws on anything else, because a list that is misread trusts the wrong ones. */
export const proxyList = (entries: readonly string[]): BlockList => {
  const list = new BlockList()
  for (const entry of entries) {
    if (entry === 'loopback') {
      list.addSubnet('127.0.0.0', 8, 'ipv4')
      list.addAddress('::1', 'ipv6')
      continue
    }
    const [address = '', bits] = entry.split('/')
    const family = isIP(address)
    if (!family) throw new RangeError(entry)
    const type = family === 6 ? 'ipv6' : 'ipv4'
    if (bits === undefined) list.addAddress(address, type)
    else list.addSubnet(address, Number(bits), type)
  }
  return list
}

const isOn = (list: BlockList, address: string): boolean => {
  const family = isIP(address)
  return family !== 0 && list.check(address, family === 6 ? 'ipv6' : 'ipv4')
}

/** Who asks. X-Forwarded-* count only from a trusted proxy, and of X-Forwarded-For the last address that no trusted proxy has. */
export const clientOf = (c: Context, proxies: BlockList, isHttps: boolean): Client => {
  const socket = (c.env as { incoming?: IncomingMessage } | undefined)?.incoming?.socket
  const peer = plainAddress(socket?.remoteAddress ?? '')
  const host = c.req.header('host') ?? ''
  if (!isOn(proxies, peer)) return { address: peer, isHttps, host }
  const hops = (c.req.header('x-forwarded-for') ?? '').split(',').map(plainAddress).filter((hop) => isIP(hop))
  const address = hops.reverse().find((hop) => !isOn(proxies, hop)) ?? peer
  return {
    address,
    isHttps: isHttps || c.req.header('x-forwarded-proto')?.trim().toLowerCase() === 'https',
    host: c.req.header('x-forwarded-host') ?? host,
  }
}

/** What rate limits count by: of an IPv6 address the network, since a host has a whole one to itself. */
export const limitKey = (address: string): string => (isIP(address) === 6 ? address.split(':').slice(0, 4).join(':') : address)
