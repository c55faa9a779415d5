/** Times of day and shifts need `Temporal`. Browsers that have it load nothing; the others fetch the polyfill once, before the first screen. */
export const loadTemporal = async (): Promise<void> => {
  if (!('Temporal' in globalThis)) await import('temporal-polyfill/global')
}
