import { fileURLToPath } from 'node:url'
import { build } from 'vite'

/** A script of this folder and all that it imports, as one text to put into a page. */
export const builtPage = async (name: string): Promise<string> => {
  const entry = fileURLToPath(new URL(name, import.meta.url))
  const built = await build({
    configFile: false, logLevel: 'silent', define: { 'process.env.NODE_ENV': '"production"' },
    build: { write: false,  lib: { entry, formats: ['iife'], name: 'bench' }, rolldownOptions: { output: { codeSplitting: false } } },
  })
  const [first] = Array.isArray(built) ? built : [built]
  if (!first || !('output' in first)) throw new Error('the page was not built')
  return first.output.map((file) => (file.type === 'chunk' ? file.code : '')).join('\n')
}
