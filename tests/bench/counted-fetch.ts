export interface Traffic {
  requests: number
  bytesUp: number
  bytesDown: number
}

/** Counts what goes over the wire of a page; headers are not counted. */
export const countFetch = (): { take(): Traffic } => {
  let [requests, bytesUp] = [0, 0]
  performance.setResourceTimingBufferSize(100_000)
  const real = globalThis.fetch.bind(globalThis)
  const size = (body: unknown): number => (typeof body === 'string' ? new TextEncoder().encode(body).length : body instanceof Uint8Array ? body.byteLength : body instanceof Blob ? body.size : 0)
  globalThis.fetch = (...[input, init]: Parameters<typeof fetch>) => {
    requests++
    bytesUp += size(init?.body)
    return real(input, init)
  }
  return {
    take() {
      const bytesDown = (performance.getEntriesByType('resource') as PerformanceResourceTiming[]).reduce((sum, { encodedBodySize }) => sum + encodedBodySize, 0)
      const taken = { requests, bytesUp, bytesDown }
      ;[requests, bytesUp] = [0, 0]
      performance.clearResourceTimings()
      return taken
    },
  }
}
