import { cleanupOutdatedCaches, createHandlerBoundToURL, precacheAndRoute } from 'workbox-precaching'
import { NavigationRoute, registerRoute } from 'workbox-routing'
import { keepLaterMessage, sendTag } from '../src/device/background.ts'
import { isOptional, optionalFile } from '../src/device/optional-files.ts'
import { focusApp } from './focus-app.ts'
import { isLater, keepLater, laterFile, tidyLater } from './later.ts'
import { sendInBackground } from './send-in-background.ts'

interface SyncEvent extends ExtendableEvent {
  readonly tag: string
}
declare let self: ServiceWorkerGlobalScope & { readonly __WB_MANIFEST: { url: string; revision: string | null }[] }

// Written out: the package means any self of its own by this name, whose entries may be plain addresses.
const files: { url: string; revision: string | null }[] = self.__WB_MANIFEST
precacheAndRoute(files.filter(({ url }) => !isLater(url)))
cleanupOutdatedCaches()
const later = files.filter(({ url }) => isLater(url)).map(({ url }) => `/${url}`)
registerRoute(({ url }) => url.origin === self.location.origin && isLater(url.pathname), ({ request }) => laterFile(request))

// Every address of the app is the one page; what belongs to the server, and whatever looks like a file, is not the app's.
registerRoute(new NavigationRoute(createHandlerBoundToURL('/index.html'), { denylist: [/^\/(api|healthz|metrics)(\/|$)/, /\/[^/]+\.[^/]+$/] }))

registerRoute(
  ({ url }) => url.origin === self.location.origin && isOptional(url.pathname),
  ({ request }) => optionalFile(request),
)

// The page that installs it is served by it at once: a phone may lose the network in its first minute.
self.addEventListener('activate', (event) => event.waitUntil(Promise.all([self.clients.claim(), tidyLater(later)])))

self.addEventListener('sync' as 'message', (event) => {
  const { tag, waitUntil } = event as unknown as SyncEvent
  if (tag === sendTag) waitUntil.call(event, sendInBackground())
})

self.addEventListener('message', (event) => {
  const { type } = (event.data ?? {}) as { type?: unknown }
  if (type === keepLaterMessage) event.waitUntil(keepLater(later))
  // A new version waits until the page says so: only the page knows whether somebody is mid-entry.
  if (type === 'SKIP_WAITING') void self.skipWaiting()
})

self.addEventListener('notificationclick', (event) => {
  event.notification.close()
  event.waitUntil(focusApp((event.notification.data as { path?: unknown } | null)?.path))
})
