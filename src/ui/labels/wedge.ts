import { parseTankLabel } from '../../rounds/tank-label.ts'
import type { App } from '../app-context.ts'
import { buzz } from '../buzz.ts'
import { openLabel } from './open-label.ts'

/** A hand scanner types the next letter long before this; a person who has typed an `h` by chance does not go on as an address does. */
const longestPause = 500

/** Reads what a hand scanner types: the address of a tank label, ended by Enter. Figures in it never reach a number pad. */
export const createWedge = (origin: string, onLabel: (text: string) => void): ((key: string, at: number) => boolean) => {
  let typed = ''
  let typedAt = 0
  /** True: this key belongs to a label. */
  return (key, at) => {
    if (at - typedAt > longestPause) typed = ''
    typedAt = at
    if (key === 'Enter') {
      const text = typed
      typed = ''
      if (text.length <= origin.length) return false
      onLabel(text)
      return true
    }
    if (key.length !== 1) return false
    const next = typed + key
    const isLabel = next.startsWith(`${origin}/at/`) || `${origin}/at/`.startsWith(next)
    typed = isLabel ? next : ''
    return isLabel
  }
}

/** A label that is scanned with a hand scanner opens its check on whatever screen one stands; whoever scans it stands there. */
export const startWedge = (app: App): void => {
  const wedge = createWedge(location.origin, (text) => {
    const read = parseTankLabel(text, location.origin)
    if (!read.ok || app.person.value === null) return buzz('refused')
    buzz('saved')
    void openLabel(app, read.label, true)
  })
  // Before any screen hears of the key.
  addEventListener(
    'keydown',
    (event) => {
      if (event.ctrlKey || event.metaKey || event.altKey) return
      if (event.target instanceof HTMLElement && event.target.closest('input, textarea, select')) return
      if (!wedge(event.key, event.timeStamp)) return
      event.preventDefault()
      event.stopImmediatePropagation()
    },
    true,
  )
}
