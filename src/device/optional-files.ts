/**
 * Large files that a person agrees to fetch (the meter reader): kept in a cache with a name of its own, so that they outlive new
 * versions of the app. The cache exists only after that agreement; without it nothing is kept.
 */
export const optionalCache = 'optional-files'
export const optionalPath = '/reader/'

export const isOptional = (path: string): boolean => path.startsWith(optionalPath)

/** Fetches them for work without a network, and drops what is no longer asked for. Throws when one cannot be fetched; what was kept stays. */
export const keepOptional = async (paths: readonly string[], onFile: (done: number, of: number) => void = () => undefined): Promise<void> => {
  const cache = await caches.open(optionalCache)
  let done = 0
  for (const path of paths) {
    if (!(await cache.match(path))) await cache.add(path)
    onFile(++done, paths.length)
  }
  const wanted = new Set(paths)
  for (const request of await cache.keys()) if (!wanted.has(new URL(request.url).pathname)) await cache.delete(request)
}

export const areKept = async (paths: readonly string[]): Promise<boolean> => {
  if (!(await caches.has(optionalCache))) return false
  const cache = await caches.open(optionalCache)
  const found = await Promise.all(paths.map((path) => cache.match(path)))
  return found.every((answer) => answer !== undefined)
}

export const dropOptional = async (): Promise<void> => {
  await caches.delete(optionalCache)
}

/** What the service worker answers: the kept file, else the network, which it keeps only where keeping was agreed to. */
export const optionalFile = async (request: Request): Promise<Response> => {
  if (!(await caches.has(optionalCache))) return fetch(request)
  const cache = await caches.open(optionalCache)
  const keptAnswer = await cache.match(request)
  if (keptAnswer) return keptAnswer
  const answer = await fetch(request)
  if (answer.ok) await cache.put(request, answer.clone())
  return answer
}
