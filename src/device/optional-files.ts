/**
 * Large files that a person agrees to fetch (the meter reader): kept in a cache with a name of its own, so that they outlive new
 * versions of the app. The cache exists only after that agreement; without it nothing is kept.
 */
export const optionalCache = 'optional-files'
export const optionalPath = '/reader/'

export const isOptional = (path: string): boolean => path.startsWith(optionalPath)

export interface OptionalFile {
  path: string
  /** As kept, not as sent: what the progress counts. */
  bytes: number
}

/**
 * Fetches them for work without a network, and drops what is no longer asked for. Throws when one cannot be fetched or comes short; what
 * was kept stays, and the next try goes on from there.
 */
export const keepOptional = async (files: readonly OptionalFile[], onProgress: (share: number) => void, signal?: AbortSignal): Promise<void> => {
  const cache = await caches.open(optionalCache)
  const all = files.reduce((sum, { bytes }) => sum + bytes, 0)
  let before = 0
  for (const { path, bytes } of files) {
    if (!(await cache.match(path))) {
      const kept = await whole(await fetch(path, { ...(signal ? { signal } : {}) }), (done) => onProgress(Math.min(1, (before + done) / all)))
      if (kept.bytes !== bytes) throw new Error(`${path} came with ${kept.bytes} of ${bytes} bytes`)
      await cache.put(path, kept.answer)
    }
    before += bytes
    onProgress(before / all)
  }
  const wanted = new Set(files.map(({ path }) => path))
  for (const request of await cache.keys()) if (!wanted.has(new URL(request.url).pathname)) await cache.delete(request)
}

/** The answer read to its end and made anew with the same headers: a worker's script brings its content policy with it. */
const whole = async (answer: Response, onBytes: (done: number) => void): Promise<{ answer: Response; bytes: number }> => {
  if (!answer.ok || !answer.body) throw new Error(`${answer.url} answered ${answer.status}`)
  const parts: Uint8Array<ArrayBuffer>[] = []
  const from = answer.body.getReader()
  let bytes = 0
  for (let read = await from.read(); !read.done; read = await from.read()) {
    parts.push(read.value)
    bytes += read.value.length
    onBytes(bytes)
  }
  const headers = new Headers(answer.headers)
  // The body is unpacked by now.
  for (const name of ['content-encoding', 'content-length']) headers.delete(name)
  return { answer: new Response(new Blob(parts), { headers }), bytes }
}

export const areKept = async (files: readonly OptionalFile[]): Promise<boolean> => {
  if (!(await isAgreed())) return false
  const cache = await caches.open(optionalCache)
  const found = await Promise.all(files.map(({ path }) => cache.match(path)))
  return found.every((answer) => answer !== undefined)
}

/** Somebody has agreed on this phone; a new version of the files needs no second asking. */
export const isAgreed = (): Promise<boolean> => caches.has(optionalCache)

export const dropOptional = async (): Promise<void> => {
  await caches.delete(optionalCache)
}

/** What the service worker answers: the kept file, else the network's. Only `keepOptional` keeps, so that nothing half fetched is ever kept. */
export const optionalFile = async (request: Request): Promise<Response> =>
  // Opened only where it is: opening makes it, and its being there means that somebody has agreed.
  ((await isAgreed()) ? await (await caches.open(optionalCache)).match(request) : undefined) ?? fetch(request)
