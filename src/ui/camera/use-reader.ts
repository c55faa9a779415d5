import { useEffect, useState } from 'preact/hooks'
import type { MeterReader } from '../../device/meter-reader.ts'
import type { ReaderFaultCode } from '../../device/reader-fault.ts'
import { useApp } from '../app-context.ts'
import { faultOf } from './use-live.ts'

type Fault = ReaderFaultCode | 'fault' | 'photo'

export type ReaderStage =
  | { at: 'looking' }
  /** Nobody has agreed on this phone yet. */
  | { at: 'consent'; sentBytes: number }
  | { at: 'fetching'; share: number; sentBytes: number }
  | { at: 'notFetched'; why: 'offline' | 'full' }
  | { at: 'starting' }
  | { at: 'ready'; reader: MeterReader }
  | { at: 'fault'; code: Fault }

export interface UseReader {
  stage: ReaderStage
  /** Agrees, or tries again. */
  fetch(): void
  fail(code: Fault): void
}

/** From the first tap to a reader that reads: asked once, fetched once, started when the camera opens. */
export const useReader = (): UseReader => {
  const app = useApp()
  const [stage, setStage] = useState<ReaderStage>({ at: 'looking' })
  const [stop] = useState(() => new AbortController())

  const start = async (reader: MeterReader): Promise<void> => {
    setStage({ at: 'starting' })
    await reader.warm()
    setStage({ at: 'ready', reader })
  }
  const fetchAll = async (): Promise<void> => {
    const reader = await app.reader()
    // What is kept is not what it should be: fetched anew.
    if (stage.at === 'fault' && (stage.code === 'fileDamaged' || stage.code === 'fileMissing')) await reader.drop()
    if ((await reader.state()) !== 'kept') {
      setStage({ at: 'fetching', share: 0, sentBytes: reader.sentBytes })
      try {
        await reader.keep((share) => setStage({ at: 'fetching', share, sentBytes: reader.sentBytes }), stop.signal)
      } catch (thrown) {
        setStage({ at: 'notFetched', why: (thrown as { name?: unknown }).name === 'QuotaExceededError' ? 'full' : 'offline' })
        return
      }
    }
    await start(reader)
  }
  const guarded = (work: Promise<void>): void =>
    void work.catch((thrown: unknown) => {
      if (!stop.signal.aborted) setStage({ at: 'fault', code: faultOf(thrown) })
    })
  useEffect(() => {
    guarded(
      app.reader().then(async (reader) => {
        const state = await reader.state()
        if (state === 'none') setStage({ at: 'consent', sentBytes: reader.sentBytes })
        else await fetchAll()
      }),
    )
    return () => stop.abort()
  }, [])
  return { stage, fetch: () => guarded(fetchAll()), fail: (code) => setStage({ at: 'fault', code }) }
}
