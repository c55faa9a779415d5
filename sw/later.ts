/** Parts that no round begins with (bench, charts, the plan's editor, the other language) lie in a folder of their own: installing waits for none of them. */
export const isLater = (path: string): boolean => /^\/?later\//.test(path)

/** Not named as a precache: those of older versions are thrown away by name. */
const cacheName = 'later-files'

/** The content of each is in its name, so that what is kept under a name never grows old. */
export const laterFile = async (request: Request): Promise<Response> => {
  const cache = await caches.open(cacheName)
  const kept = await cache.match(request.url)
  if (kept) return kept
  const answer = await fetch(request)
  if (answer.ok) await cache.put(request.url, answer.clone())
  return answer
}

/** One after the other, so that what somebody is waiting for is not held up. Where the network goes meanwhile, the next start goes on from there. */
export const keepLater = async (paths: readonly string[]): Promise<void> => {
  const cache = await caches.open(cacheName)
  for (const path of paths) {
    if (await cache.match(path)) continue
    const answer = await fetch(path, { credentials: 'same-origin' }).catch(() => undefined)
    if (!answer) return
    if (answer.ok) await cache.put(path, answer)
  }
}

/** Throws away what the app no longer asks for. */
export const tidyLater = async (paths: readonly string[]): Promise<void> => {
  const wanted = new Set(paths.map((path) => new URL(path, self.location.origin).pathname))
  const cache = await caches.open(cacheName)
  for (const request of await cache.keys()) if (!wanted.has(new URL(request.url).pathname)) await cache.delete(request)
}
