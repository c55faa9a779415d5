import { createHash } from 'node:crypto'
import { readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { gzipSync } from 'node:zlib'
import { defineConfig, type Plugin } from 'vite'
import { VitePWA, type ManifestOptions } from 'vite-plugin-pwa'
import { saidByFingerprint } from './ui/words/es/safety/said.ts'

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
  // Drawn by tests/shots/manifest-pictures.ts.
  screenshots: [
    { src: '/screen-now.png', sizes: '390x844', type: 'image/png', form_factor: 'narrow', label: 'What is due and what is out, on the path of the film' },
    { src: '/screen-reading.png', sizes: '390x844', type: 'image/png', form_factor: 'narrow', label: 'A reading at the tank' },
    { src: '/screen-board.png', sizes: '1366x768', type: 'image/png', form_factor: 'wide', label: 'The laboratory on the supervisor’s desk' },
  ],
}

/**
 * The meter reader under /reader/: its engine as it comes, its model, its start script. Some 4 MB, outside the precache, fetched when a
 * person agrees to it. Version or content is in each path, so what a phone has kept never stands in for another. The page learns paths
 * and sizes as `__READER__`.
 */
const readerPlugin = (): Plugin => {
  const versionOf = (name: string): string => (JSON.parse(readFileSync(`${top}node_modules/${name}/package.json`, 'utf8')) as { version: string }).version
  const file = (source: string, name: (sha256: string) => string) => {
    const bytes = readFileSync(`${top}${source}`)
    const sha256 = createHash('sha256').update(bytes).digest('hex')
    // `bytes` as it is kept, `sent` as it comes over the network.
    return { path: `/reader/${name(sha256)}`, source: bytes, sha256, bytes: bytes.length, sent: gzipSync(bytes).length }
  }
  const engine = (name: string, script: string) => file(`node_modules/${name}/${script}`, () => `${name}-${versionOf(name)}/${script.split('/').at(-1)}`)
  const files = {
    start: file('src/device/reader-start.js', (sha256) => `start-${sha256.slice(0, 8)}.js`),
    worker: engine('tesseract.js', 'dist/worker.min.js'),
    core: engine('tesseract.js-core', 'tesseract-core-simd-lstm.wasm.js'),
    plainCore: engine('tesseract.js-core', 'tesseract-core-lstm.wasm.js'),
    model: file('src/reader/model/figures.traineddata', (sha256) => `figures-${sha256.slice(0, 8)}.traineddata`),
  }
  const told = Object.fromEntries(Object.entries(files).map(([name, { source: _, ...it }]) => [name, it]))
  return {
    name: 'reader',
    config: () => ({ define: { __READER__: JSON.stringify(told) } }),
    configureServer({ middlewares }) {
      middlewares.use((request, response, next) => {
        const asked = Object.values(files).find(({ path }) => path === request.url)
        if (!asked) return next()
        response.setHeader('Content-Type', asked.path.endsWith('.js') ? 'text/javascript' : 'application/octet-stream')
        response.end(asked.source)
      })
    },
    generateBundle() {
      for (const { path, source } of Object.values(files)) this.emitFile({ type: 'asset', fileName: path.slice(1), source })
    },
  }
}

/** The label reader's table of kanji is two thirds of it; a tank label holds an address in plain letters. */
const labelReaderWithoutKanji = (): Plugin => ({
  name: 'label-reader-without-kanji',
  apply: 'build',
  transform(code, id) {
    if (!id.includes('/jsqr/dist/')) return undefined
    const cut = code.replace(/exports\.shiftJISTable = \{[^}]*\};/, 'exports.shiftJISTable = {};')
    if (cut === code) this.error('jsqr has no table of kanji any more')
    return { code: cut, map: null }
  },
})

/** Sentences are looked up by their English; the phone has that already, in the cards. */
const saidWithoutEnglish = (): Plugin => ({
  name: 'said-without-english',
  apply: 'build',
  transform: (_code, id) => (id.endsWith('/words/es/safety/said.ts') ? { code: `export const saidByFingerprint = ${JSON.stringify(saidByFingerprint)}`, map: null } : undefined),
})

/** What no round begins with: rooms, and what only they are made of. The service worker keeps it too, once the rest is there. */
const laterRooms = ['bench', 'board', 'method', 'mixing', 'plan', 'record', 'replenish', 'response', 'silver', 'stock', 'trends', 'words/es'].map((room) => `/src/ui/${room}/`)
const laterParts = ['/src/ui/enrol/enrol.tsx', '/src/ui/enrol/start.tsx', '/src/ui/menu/menu.tsx', '/src/ui/menu/phone-page.tsx', '/src/ui/menu/setup-page.tsx', '/src/ui/labels/label-sheet.tsx', '/src/science/catalogue.ts', '/src/ui/boot/archive-of.ts', '/src/ui/boot/reader-of.ts', '/src/ui/words/es/', '/src/ui/words/en/plan', '/src/ui/parts/working.tsx', '/src/ui/waste/waste-screen', '/node_modules/jsqr/', '/node_modules/psychrolib/']

/** The invented laboratory has a folder of its own as well: it is fetched once, when a laboratory is founded, which takes the network anyhow. */
const shelfOf = ({ facadeModuleId: door, moduleIds }: { facadeModuleId: string | null; moduleIds: readonly string[] }): 'assets' | 'demo' | 'later' => {
  if (door?.includes('/src/demo/') || door?.endsWith('/plan-names/demo.ts')) return 'demo'
  const isOf = (parts: readonly string[], id: string): boolean => parts.some((part) => id.includes(part))
  const isLater = door ? isOf([...laterRooms, ...laterParts], door) : moduleIds.some((id) => isOf([...laterRooms, ...laterParts], id))
  return isLater ? 'later' : 'assets'
}

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
    // What the first script imports is named in the page. The list of what each screen is made of weighs more in the first load than the preloading of it saves: all of it is in the service worker's store.
    modulePreload: { polyfill: false, resolveDependencies: (_file, needed, { hostType }) => (hostType === 'html' ? needed : needed.filter((it) => it.endsWith('.css'))) },
    assetsInlineLimit: 0,
    license: { fileName: 'licences.md' },
    rolldownOptions: {
      output: {
        chunkFileNames: (chunk) => `${shelfOf(chunk)}/[name]-[hash].js`,
        // One file of what every screen of a round is made of: a dozen small ones weigh half as much again.
        codeSplitting: { groups: [{ name: 'parts', test: /src\/ui\/(parts\/(banner|bath-gauge|call-me|card|field|gauge-scale|hold-to-confirm|number-pad|sheet|spark|timer-ring|verdict-mark)|countdown|saving|saving-problem|buzz)\b/ }] },
      },
    },
  },
  plugins: [
    labelReaderWithoutKanji(),
    saidWithoutEnglish(),
    readerPlugin(),
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
        // The icons of the home screen are the system's, which takes them when the app is installed.
        globPatterns: ['**/*.{js,css,html,woff2}', 'icon.svg'],
        globIgnores: ['reader/**', 'demo/**', 'sw.js'],
        // The browser reads this one only when installing; the rest carry a hash of their content in their names.
        dontCacheBustURLsMatching: /^(assets|later)\//,
      },
    }),
  ],
})
