import { connect, type AddressInfo } from 'node:net'
import type { Server } from 'node:http'
import { serve } from '@hono/node-server'
import type { Parts } from '../../src/server/parts.ts'
import { createApp } from '../../src/server/app.ts'

/** The app behind a real port, as the program serves it. */
export const listenWith = async (parts: Parts): Promise<{ port: number; origin: string; close(): Promise<void> }> => {
  const server = serve({ fetch: createApp(parts).fetch, port: 0, hostname: '127.0.0.1', serverOptions: { headersTimeout: 600, requestTimeout: 5_000, connectionsCheckingInterval: 100 } }) as Server
  await new Promise<void>((resolve) => (server.listening ? resolve() : server.once('listening', resolve)))
  const { port } = server.address() as AddressInfo
  return {
    port,
    origin: `http://127.0.0.1:${port}`,
    close: () =>
      new Promise((resolve) => {
        server.close(() => resolve())
        server.closeAllConnections()
      }),
  }
}

export interface RawAnswer {
  /** Of the first answer; 0 where the connection was closed without one. */
  status: number
  text: string
  /** How many answers came over the one connection. */
  answers: number
}

/** Bytes as no browser would send them: pieces with pauses between, then whatever comes back until the other side closes or falls silent. */
export const raw = (port: number, pieces: readonly (string | Uint8Array)[], given: { pauseMs?: number; silenceMs?: number } = {}): Promise<RawAnswer> =>
  new Promise((resolve) => {
    const socket = connect(port, '127.0.0.1')
    let text = ''
    let silence: NodeJS.Timeout | undefined
    let isOver = false
    const end = (): void => {
      isOver = true
      clearTimeout(silence)
      socket.destroy()
      resolve({ status: Number(/^HTTP\/1\.1 (\d{3})/.exec(text)?.[1] ?? 0), text, answers: text.match(/^HTTP\/1\.1 \d{3}/gm)?.length ?? 0 })
    }
    const listen = (): void => {
      clearTimeout(silence)
      silence = setTimeout(end, given.silenceMs ?? 2_000)
    }
    socket.setEncoding('latin1').on('data', (chunk: string) => {
      text += chunk
      listen()
    })
    socket.on('error', () => undefined).on('close', end)
    socket.once('connect', () => {
      const send = (place: number): void => {
        if (isOver || socket.destroyed || place >= pieces.length) return listen()
        socket.write(pieces[place]!)
        if (given.pauseMs) setTimeout(() => send(place + 1), given.pauseMs)
        else send(place + 1)
      }
      send(0)
    })
  })
