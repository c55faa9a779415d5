/** What of a chart is seen, in milliseconds since 1970. */
export interface Window {
  from: number
  to: number
}

const minute = 60_000
/** Closer in there is nothing more to see. */
const shortest = 10 * minute

/** A window kept within the chart's extent, moved rather than cut where it can be. */
export const within = ({ from, to }: Window, extent: Window): Window => {
  const span = Math.min(Math.max(to - from, shortest), Math.max(extent.to - extent.from, shortest))
  const start = Math.min(Math.max(from, extent.from), Math.max(extent.from, extent.to - span))
  return { from: start, to: start + span }
}

/** `factor` below 1 comes closer; the time at `about` keeps its place. */
export const zoomed = (window: Window, extent: Window, factor: number, about = (window.from + window.to) / 2): Window =>
  within({ from: about - (about - window.from) * factor, to: about + (window.to - about) * factor }, extent)

export const moved = ({ from, to }: Window, extent: Window, share: number): Window => {
  const by = (to - from) * share
  return within({ from: from + by, to: to + by }, extent)
}

/** The window moved no further than it takes to show an instant, with some room. */
export const showing = (window: Window, extent: Window, time: number): Window => {
  if (time >= window.from && time <= window.to) return window
  const half = (window.to - window.from) / 2
  return within({ from: time - half, to: time + half }, extent)
}
