import { effect, signal, type Signal } from '@preact/signals'
import type { Theme } from '../app-context.ts'

const key = 'theme'

/**
 * The theme is kept where it can be read at once: a white flash in a dark room costs the eyes twenty minutes. Until it is set, the page
 * stays black.
 */
export const openTheme = (): Signal<Theme> => {
  const theme = signal<Theme>(read() === 'safelight' ? 'safelight' : 'paper')
  effect(() => {
    document.documentElement.dataset['theme'] = theme.value
    document.querySelector('meta[name="theme-color"]')?.setAttribute('content', theme.value === 'safelight' ? '#000000' : '#f3f1ea')
    try {
      localStorage.setItem(key, theme.value)
    } catch {
      // Storage switched off: the store says so in its own words.
    }
  })
  return theme
}

const read = (): string | null => {
  try {
    return localStorage.getItem(key)
  } catch {
    return null
  }
}
