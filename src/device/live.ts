import { liveEvent, type LiveEvent } from '../wire/live.ts'
import { backoffMs } from './sender.ts'
import type { Door } from './server-door.ts'

/** The connection that tells when there is something to pull, for a board that is looked at. The minute's beat does without it. */
export interface Live {
  stop(): void
}

export interface LiveParts {
  door: Door
  /**
   * There may be something to pull. Not told of `devices`: each exchange reports and so changes that list; an exchange in answer to it would
   * call forth the next, on every phone, without end.
   */
  onNews(): void
  after(milliseconds: number, work: () => void): () => void
  chance(): number
}

/** The server says something at least every 20 s; longer silence is a dead connection. */
const silenceMs = 45_000
const hours = 3_600_000

export const openLive = ({ door, onNews, after, chance }: LiveParts): Live => {
  const abort = new AbortController()
  let failures = 0
  let cancel: (() => void) | undefined

  const connect = async (): Promise<void> => {
    const opened = await door.open('live', { signal: abort.signal, timeoutMs: 12 * hours })
    let pauseMs: number | undefined
    if (opened.ok && opened.answer.body) {
      failures = 0
      pauseMs = await follow(opened.answer.body)
    }
    if (abort.signal.aborted) return
    failures++
    cancel = after(pauseMs ?? 1_000 + backoffMs(failures, chance()), () => void connect())
  }

  const follow = async (body: ReadableStream<Uint8Array<ArrayBuffer>>): Promise<number | undefined> => {
    const reader = body.getReader()
    const decoder = new TextDecoder()
    let text = ''
    let cancelSilence = after(silenceMs, () => void reader.cancel())
    try {
      for (;;) {
        const { done, value } = await reader.read()
        if (done) return undefined
        cancelSilence()
        cancelSilence = after(silenceMs, () => void reader.cancel())
        text += decoder.decode(value, { stream: true })
        const blocks = text.split('\n\n')
        text = blocks.pop()!
        for (const block of blocks) {
          const event = parseEvent(block)
          if (event?.event === 'head') onNews()
          if (event?.event === 'bye') return event.data.pauseMs
        }
      }
    } catch {
      // The network went: we come again after a pause.
      return undefined
    } finally {
      cancelSilence()
    }
  }

  void connect()
  return {
    stop() {
      abort.abort()
      cancel?.()
    },
  }
}

/** One block of an event stream; undefined for a sign of life or an event of a later version. */
export const parseEvent = (block: string): LiveEvent | undefined => {
  const fields = new Map(block.split('\n').map((line) => [line.slice(0, line.indexOf(':')), line.slice(line.indexOf(':') + 1).trim()]))
  const data = fields.get('data')
  if (!data) return undefined
  try {
    return liveEvent.safeParse({ event: fields.get('event'), data: JSON.parse(data) as unknown }).data
  } catch {
    return undefined
  }
}
