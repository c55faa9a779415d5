import { readFile } from 'node:fs/promises'
import { createServer, type Server } from 'node:http'
import { extname, join } from 'node:path'

const site = new URL('../../node_modules/.cache/shots/site/', import.meta.url).pathname
const types: Record<string, string> = { '.html': 'text/html', '.js': 'text/javascript', '.css': 'text/css', '.woff2': 'font/woff2' }

/** The stage as it was built, on loopback. */
export const serveStage = async (): Promise<{ origin: string; server: Server }> => {
  const server = createServer((request, response) => {
    const path = new URL(request.url ?? '/', 'http://x').pathname
    const file = extname(path) ? path : '/index.html'
    readFile(join(site, file)).then(
      (bytes) => response.writeHead(200, { 'content-type': types[extname(file)] ?? 'application/octet-stream' }).end(bytes),
      () => response.writeHead(404).end(),
    )
  })
  await new Promise<void>((done) => server.listen(0, '127.0.0.1', done))
  return { origin: `http://127.0.0.1:${(server.address() as { port: number }).port}`, server }
}
