import type { LiveEvent } from '../wire/live.ts'
import type { Parts } from './parts.ts'

const heartbeatMs = 20_000
const pauseMsAtStop = 2_000
/** Events that may wait for a slow phone. Beyond, it is let go rather than kept in memory; it pulls when it is back. */
const mostWaiting = 64

const frame = ({ event, data }: LiveEvent): Uint8Array => Buffer.from(`event: ${event}\ndata: ${JSON.stringify(data)}\n\n`)

/** One open board: events as they come, a sign of life in between, an end when the server stops or the device may no longer listen. */
export const liveStream = (parts: Parts, given: { first: LiveEvent; mayStay: () => Promise<boolean>; onEnd: () => void }): ReadableStream<Uint8Array> => {
  let release = (): void => undefined
  return new ReadableStream<Uint8Array>(
    {
      start(controller) {
        let isOpen = true
        const finish = (): void => {
          if (!isOpen) return
          release()
          controller.close()
        }
        const send = (bytes: Uint8Array): void => {
          if (!isOpen) return
          if ((controller.desiredSize ?? 0) <= 0) finish()
          else controller.enqueue(bytes)
        }
        const bye = (): void => {
          send(frame({ event: 'bye', data: { pauseMs: pauseMsAtStop } }))
          finish()
        }
        const stopListening = parts.database.listen((event) => {
          send(frame(event))
          if (event.event === 'devices') given.mayStay().then((may) => (may ? undefined : bye()), bye)
        })
        const heartbeat = setInterval(() => send(Buffer.from(':\n\n')), heartbeatMs)
        parts.stopping.addEventListener('abort', bye)
        release = () => {
          if (!isOpen) return
          isOpen = false
          stopListening()
          clearInterval(heartbeat)
          parts.stopping.removeEventListener('abort', bye)
          given.onEnd()
        }
        send(frame(given.first))
        if (parts.stopping.aborted) bye()
      },
      cancel() {
        release()
      },
    },
    { highWaterMark: mostWaiting },
  )
}
