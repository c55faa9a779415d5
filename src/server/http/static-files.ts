import { createHash } from 'node:crypto'
import { readdirSync, readFileSync } from 'node:fs'
import { extname, join, relative, sep } from 'node:path'
import { promisify } from 'node:util'
import { brotliCompress, constants, gzip } from 'node:zlib'

const types: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8', '.js': 'text/javascript; charset=utf-8', '.mjs': 'text/javascript; charset=utf-8', '.css': 'text/css; charset=utf-8',
  '.json': 'application/json', '.webmanifest': 'application/manifest+json', '.svg': 'image/svg+xml', '.png': 'image/png', '.jpg': 'image/jpeg',
  '.webp': 'image/webp', '.ico': 'image/x-icon', '.woff2': 'font/woff2', '.wasm': 'application/wasm', '.txt': 'text/plain; charset=utf-8',
  '.traineddata': 'application/octet-stream', '.gz': 'application/gzip', '.onnx': 'application/octet-stream', '.map': 'application/json',
}
const worthCompressing = /^(text\/|application\/(json|manifest|wasm|octet-stream)|image\/svg)/

interface File {
  path: string
  bytes: Buffer
  type: string
  cacheControl: string
  etag: string
}

const squeeze = {
  br: (bytes: Buffer) => promisify(brotliCompress)(bytes, { params: { [constants.BROTLI_PARAM_QUALITY]: bytes.length < 300_000 ? 11 : 6 } }),
  gzip: (bytes: Buffer) => promisify(gzip)(bytes, { level: 9 }),
}
type Encoding = keyof typeof squeeze

/**
 * The built front end, taken into memory once, at the start: a path in a request is looked up and never joined to a folder, and a build
 * made meanwhile cannot mix with this one. What has a hash in its name never changes; everything else is asked for again each time.
 * Compressed forms are made on first use and kept.
 */
export class StaticFiles {
  readonly #files = new Map<string, File>()
  readonly #squeezed = new Map<string, Promise<Buffer>>()

  constructor(folder: string) {
    for (const entry of readdirSync(folder, { recursive: true, withFileTypes: true })) {
      if (!entry.isFile()) continue
      const disk = join(entry.parentPath, entry.name)
      const bytes = readFileSync(disk)
      const path = `/${relative(folder, disk).split(sep).join('/')}`
      const isHashed = /^\/assets\/.*-[\w-]{8,}\.\w+$/.test(path)
      this.#files.set(path, {
        path,
        bytes,
        type: types[extname(path)] ?? 'application/octet-stream',
        cacheControl: isHashed ? 'public, max-age=31536000, immutable' : 'no-cache',
        etag: `"${createHash('sha256').update(bytes).digest('base64url').slice(0, 22)}"`,
      })
    }
  }

  /** Undefined where there is no such file. */
  async answer(path: string, request: { acceptEncoding: string; ifNoneMatch: string | undefined }): Promise<Response | undefined> {
    const file = this.#files.get(path)
    if (!file) return undefined
    const headers = new Headers({ 'Content-Type': file.type, 'Cache-Control': file.cacheControl, ETag: file.etag })
    if (worthCompressing.test(file.type)) headers.set('Vary', 'Accept-Encoding')
    if (request.ifNoneMatch?.split(',').some((tag) => tag.trim().replace(/^W\//, '') === file.etag)) return new Response(null, { status: 304, headers })
    const encoding = this.#encodingFor(file, request.acceptEncoding)
    if (!encoding) return new Response(new Uint8Array(file.bytes), { headers })
    headers.set('Content-Encoding', encoding)
    headers.set('ETag', `W/${file.etag}`)
    return new Response(new Uint8Array(await this.#compressed(file, encoding)), { headers })
  }

  #encodingFor(file: File, accepted: string): Encoding | undefined {
    if (!worthCompressing.test(file.type) || file.bytes.length < 512) return undefined
    const offered = accepted.split(',').map((it) => it.split(';')[0]?.trim())
    return offered.includes('br') ? 'br' : offered.includes('gzip') ? 'gzip' : undefined
  }

  #compressed(file: File, encoding: Encoding): Promise<Buffer> {
    const key = `${encoding} ${file.path}`
    let made = this.#squeezed.get(key)
    if (!made) this.#squeezed.set(key, (made = squeeze[encoding](file.bytes)))
    return made
  }
}
