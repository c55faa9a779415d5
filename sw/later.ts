import { PrecacheController, PrecacheRoute, type PrecacheEntry } from 'workbox-precaching'
import { registerRoute } from 'workbox-routing'

/** Parts that no round begins with (bench, charts, the plan's editor, the other language) lie in a folder of their own: installing waits for none of them. */
export const isLater = (url: string): boolean => url.startsWith('later/')

/** Not named as a precache: those of older versions are thrown away by name. */
const cacheName = 'later-files'

/** Kept like the rest, version by version, but fetched when the page asks for it: the app can work without a network before they are all there. */
export const laterFiles = (entries: readonly PrecacheEntry[]): { keep(event: ExtendableEvent): Promise<unknown>; tidy(event: ExtendableEvent): Promise<unknown> } => {
  const controller = new PrecacheController({ cacheName })
  controller.addToCacheList([...entries])
  registerRoute(new PrecacheRoute(controller))
  return {
    keep: (event) => controller.install(event),
    tidy: (event) => controller.activate(event),
  }
}
