import { readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { defineConfig, type Plugin } from 'vite'
import { VitePWA, type ManifestOptions } from 'vite-plugin-pwa'

const top = fileURLToPath(new URL('..', import.meta.url))
const paper = '#f3f1ea'
const { version } = JSON.parse(readFileSync(`${top}package.json`, 'utf8')) as { version: string }

const manifest: Partial<ManifestOptions> = {
  id: '/',
  scope: '/',
  start_url: '/',
  name: 'Bathkeeper',
  short_name: 'Bathkeeper',
  description: 'Process control of a motion-picture film laboratory, at the tank, on a phone, without a network.',
  lang: 'en',
  dir: 'ltr',
  display: 'standalone',
  orientation: 'any',
  theme_color: paper,
  background_color: paper,
  categories: ['business', 'productivity', 'utilities'],
  icons: [
    { src: '/icon.svg', sizes: 'any', type: 'image/svg+xml' },
    { src: '/icon-192.png', sizes: '192x192', type: 'image/png' },
    { src: '/icon-512.png', sizes: '512x512', type: 'image/png' },
    { src: '/maskable-512.png', sizes: '512x512', type: 'image/png', purpose: 'maskable' },
    { src: '/monochrome-512.png', sizes: '512x512', type: 'image/png', purpose: 'monochrome' },
  ],
}

/**
 * The meter reader's engine, as it comes, under /reader/. Some 4 MB: outside the precache, fetched when a person agrees to it. The
 * version is in the path, so what a phone has kept never stands in for another.
 */
const readerEngine = (): Plugin => ({
  name: 'reader-engine',
  apply: 'build',
  generateBundle() {
    const versionOf = (name: string): string => (JSON.parse(readFileSync(`${top}node_modules/${name}/package.json`, 'utf8')) as { version: string }).version
    const files = [
      ['tesseract.js', 'dist/worker.min.js'],
      ['tesseract.js-core', 'tesseract-core-simd-lstm.wasm.js'],
      ['tesseract.js-core', 'tesseract-core-lstm.wasm.js'],
    ] as const
    for (const [name, file] of files)
      this.emitFile({
        type: 'asset',
        fileName: `reader/${name}-${versionOf(name)}/${file.split('/').at(-1)}`,
        source: readFileSync(`${top}node_modules/${name}/${file}`),
      })
  },
})

export default defineConfig({
  root: fileURLToPath(new URL('.', import.meta.url)),
  publicDir: '../icons',
  cacheDir: '../node_modules/.vite',
  define: { __APP_VERSION__: JSON.stringify(version) },
  oxc: { jsx: { runtime: 'automatic', importSource: 'preact' } },
  server: { proxy: { '/api': 'http://localhost:8080' } },
  build: {
    outDir: '../dist',
    emptyOutDir: true,
    target: 'es2022',
    sourcemap: true,
    // The content policy allows neither inline scripts nor data: addresses.
    modulePreload: { polyfill: false },
    assetsInlineLimit: 0,
    license: { fileName: 'licences.md' },
  },
  plugins: [
    readerEngine(),
    VitePWA({
      strategies: 'injectManifest',
      srcDir: '../sw',
      filename: 'sw.ts',
      registerType: 'prompt',
      injectRegister: false,
      manifest,
      includeManifestIcons: false,
      injectManifest: {
        rollupOptions: { treeshake: { moduleSideEffects: false } },
        globPatterns: ['**/*.{js,css,html,woff2,svg}', 'icon-192.png'],
        globIgnores: ['reader/**', 'sw.js'],
        // The browser reads this one only when installing; the rest carry a hash of their content in their names.
        dontCacheBustURLsMatching: /^assets\//,
      },
    }),
  ],
})
