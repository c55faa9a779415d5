import { fileURLToPath } from 'node:url'
import { defineConfig } from 'vite'

/** Builds the stage: every screen of the product over a log that is written down, without server and store. */
export default defineConfig({
  root: fileURLToPath(new URL('.', import.meta.url)),
  oxc: { jsx: { runtime: 'automatic', importSource: 'preact' } },
  build: { outDir: fileURLToPath(new URL('../../node_modules/.cache/shots/site', import.meta.url)), emptyOutDir: true, chunkSizeWarningLimit: 4000 },
})
