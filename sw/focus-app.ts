declare let self: ServiceWorkerGlobalScope

/** A tap on a notice (a mixing time is over) brings the app to the front, at the screen that the notice names. */
export const focusApp = async (path: unknown): Promise<void> => {
  const address = new URL(typeof path === 'string' ? path : '/', self.location.origin)
  const target = address.origin === self.location.origin ? address.href : self.location.origin
  const windows = await self.clients.matchAll({ type: 'window', includeUncontrolled: true })
  const open = windows.find(({ visibilityState }) => visibilityState === 'visible') ?? windows[0]
  if (!open) {
    await self.clients.openWindow(target)
    return
  }
  const focused = await open.focus()
  focused.postMessage({ type: 'show', path: new URL(target).pathname })
}
