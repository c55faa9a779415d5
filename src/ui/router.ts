import { signal, type ReadonlySignal } from '@preact/signals'

/** Where the person is: `/round/neg-1` is the place `round` with the rest `['neg-1']`. */
export interface Place {
  path: string
  place: string
  rest: string[]
}

export interface Router {
  here: ReadonlySignal<Place>
  go(path: string, how?: 'push' | 'replace'): void
  back(): void
}

const placeOf = (path: string): Place => {
  const [place = '', ...rest] = path.split('/').filter(Boolean).map(decodeURIComponent)
  return { path, place: place || 'now', rest }
}

/** Links stay plain links; clicks inside the app are taken over so that no page is loaded. */
export const openRouter = (): Router => {
  const here = signal(placeOf(location.pathname))
  const arrive = (): void => {
    here.value = placeOf(location.pathname)
    scrollTo(0, 0)
  }
  addEventListener('popstate', arrive)
  const go = (path: string, how: 'push' | 'replace' = 'push'): void => {
    if (path === location.pathname && how === 'push') return
    if (how === 'push') history.pushState({ inside: true }, '', path)
    else history.replaceState(history.state, '', path)
    arrive()
  }
  addEventListener('click', (event) => {
    if (event.defaultPrevented || event.button !== 0 || event.metaKey || event.ctrlKey || event.shiftKey || event.altKey) return
    const link = event.target instanceof Element ? event.target.closest('a') : null
    if (!link || link.origin !== location.origin || link.target || link.hasAttribute('download') || link.pathname.startsWith('/api/')) return
    event.preventDefault()
    go(link.pathname)
  })
  const back = (): void => {
    if ((history.state as { inside?: boolean } | null)?.inside) history.back()
    else go('/now', 'replace')
  }
  return { here, go, back }
}
