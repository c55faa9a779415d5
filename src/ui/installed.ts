/** A phone whose home screen has a store of its own, apart from the browser's: iPhone and iPad. Only their browsers have the word. */
export const isKeptApart = (): boolean => 'standalone' in navigator

export const isInstalled = (): boolean =>
  matchMedia('(display-mode: standalone)').matches || (navigator as { standalone?: boolean }).standalone === true
