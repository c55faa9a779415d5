import { inflateSync } from 'node:zlib'
import jsQR from 'jsqr'
import sharp from 'sharp'

/**
 * As much of PDF (ISO 32000-1) as Chromium's printing writes: plain indirect objects, Flate streams, fonts with a ToUnicode map, paths filled with one
 * colour. What a page says is read through the maps of its fonts; what it shows is drawn anew from its filled paths, so that a code in it can be
 * decoded from the very shapes that a printer gets. Strokes, pictures of pixels, shadings and clips are left out.
 */
export interface PdfPage {
  widthPoints: number
  heightPoints: number
  /** In the order of writing, a line for each block of text. */
  text: string
  /** Its filled shapes as an SVG of the page's size. */
  svg: string
}

type Matrix = readonly [number, number, number, number, number, number]
interface Thing {
  head: string
  stream: Buffer | undefined
}

export const readPdf = (bytes: Buffer): PdfPage[] => {
  const things = objectsOf(bytes)
  const pages = [...things.values()].filter(({ head }) => /\/Type\s*\/Page\b/.test(head))
  return pages.map(({ head }) => {
    const [, box = ''] = /\/MediaBox\s*\[([^\]]*)\]/.exec(head) ?? []
    const [left = 0, bottom = 0, right = 0, top = 0] = box.trim().split(/\s+/).map(Number)
    const reader = new PageReader(things)
    for (const ref of refsAfter(head, 'Contents')) reader.run(things.get(ref)?.stream?.toString('latin1') ?? '', head, [1, 0, 0, 1, 0, 0])
    const [widthPoints, heightPoints] = [right - left, top - bottom]
    // PDF counts upwards, SVG downwards.
    const svg = `<svg xmlns="http://www.w3.org/2000/svg" width="${widthPoints}" height="${heightPoints}" viewBox="0 0 ${widthPoints} ${heightPoints}"><rect width="100%" height="100%" fill="#fff"/><g transform="matrix(1 0 0 -1 ${-left} ${top})">${reader.shapes.join('')}</g></svg>`
    return { widthPoints, heightPoints, text: reader.text.join('\n'), svg }
  })
}

/** The code on a page, drawn as large as a printer with so many dots an inch would; undefined where none can be read. `at`: a part of the page, in points from its upper left. */
export const codeOnPage = async ({ svg }: PdfPage, at?: { left: number; top: number; width: number; height: number }, dotsPerInch = 200): Promise<string | undefined> => {
  const scale = dotsPerInch / 72
  const drawn = sharp(Buffer.from(svg), { density: dotsPerInch, unlimited: true })
  const part = at ? drawn.extract({ left: Math.round(at.left * scale), top: Math.round(at.top * scale), width: Math.round(at.width * scale), height: Math.round(at.height * scale) }) : drawn
  const { data, info } = await part.ensureAlpha().raw().toBuffer({ resolveWithObject: true })
  return jsQR(new Uint8ClampedArray(data), info.width, info.height)?.data
}

const objectsOf = (bytes: Buffer): Map<number, Thing> => {
  const text = bytes.toString('latin1')
  const things = new Map<number, Thing>()
  for (const match of text.matchAll(/(?:^|\n)(\d+) 0 obj\b/g)) {
    const from = match.index + match[0].length
    const streamAt = text.indexOf('stream', from)
    const endAt = text.indexOf('endobj', from)
    if (streamAt < 0 || streamAt > endAt) {
      things.set(Number(match[1]), { head: text.slice(from, endAt), stream: undefined })
      continue
    }
    const head = text.slice(from, streamAt)
    const start = streamAt + 'stream'.length + (text.startsWith('\r\n', streamAt + 6) ? 2 : 1)
    const length = Number(/\/Length (\d+)/.exec(head)?.[1])
    const raw = bytes.subarray(start, start + length)
    things.set(Number(match[1]), { head, stream: head.includes('/FlateDecode') ? inflateSync(raw) : raw })
  }
  return things
}

const refsAfter = (head: string, name: string): number[] => {
  const [, found = ''] = new RegExp(`/${name}\\s*(\\[[^\\]]*\\]|\\d+ 0 R)`).exec(head) ?? []
  return [...found.matchAll(/(\d+) 0 R/g)].map(([, number]) => Number(number))
}

/** A dictionary of names and references inside another, such as the fonts of a page. */
const namedRefs = (head: string, name: string): Map<string, number> => {
  const [, found = ''] = new RegExp(`/${name}\\s*<<([^>]*)>>`).exec(head) ?? []
  return new Map([...found.matchAll(/\/(\S+)\s+(\d+) 0 R/g)].map(([, key, number]) => [key!, Number(number)]))
}

interface FontMap {
  bytesPerCode: number
  of: Map<number, string>
}

const fontMap = (map: string): FontMap => {
  const of = new Map<number, string>()
  const letters = (hex: string): string => Buffer.from(hex, 'hex').swap16().toString('utf16le')
  for (const [, part] of map.matchAll(/beginbfchar([\s\S]*?)endbfchar/g))
    for (const [, code, to] of part!.matchAll(/<([0-9A-Fa-f]+)>\s*<([0-9A-Fa-f]+)>/g)) of.set(Number.parseInt(code!, 16), letters(to!))
  for (const [, part] of map.matchAll(/beginbfrange([\s\S]*?)endbfrange/g))
    for (const [, from, until, to] of part!.matchAll(/<([0-9A-Fa-f]+)>\s*<([0-9A-Fa-f]+)>\s*<([0-9A-Fa-f]+)>/g))
      for (let code = Number.parseInt(from!, 16), place = 0; code <= Number.parseInt(until!, 16); code++, place++)
        of.set(code, letters((Number.parseInt(to!, 16) + place).toString(16).padStart(to!.length, '0')))
  const [, space = '0000'] = /begincodespacerange\s*<([0-9A-Fa-f]+)>/.exec(map) ?? []
  return { bytesPerCode: space.length / 2, of }
}

const times = (a: Matrix, b: Matrix): Matrix => [
  a[0] * b[0] + a[1] * b[2], a[0] * b[1] + a[1] * b[3], a[2] * b[0] + a[3] * b[2], a[2] * b[1] + a[3] * b[3], a[4] * b[0] + a[5] * b[2] + b[4], a[4] * b[1] + a[5] * b[3] + b[5],
]

const token = /<([0-9A-Fa-f\s]*)>|\(((?:\\[\s\S]|[^\\()])*)\)|\/([^\s/[\]<>()]+)|(-?[\d.]+)|([[\]])|([A-Za-z'"*]+)|<<|>>/g

class PageReader {
  readonly text: string[] = []
  readonly shapes: string[] = []
  readonly #fonts = new Map<number, FontMap>()

  constructor(private readonly things: ReadonlyMap<number, Thing>) {}

  run(content: string, head: string, start: Matrix): void {
    const fonts = namedRefs(head, 'Font')
    const forms = namedRefs(head, 'XObject')
    const kept: { matrix: Matrix; fill: string }[] = []
    let matrix = start
    let fill = '#000000'
    let font: FontMap | undefined
    let path = ''
    let line = ''
    let numbers: number[] = []
    let strings: Buffer[] = []
    let name = ''
    const point = (at: number): string => `${numbers.at(at)} ${numbers.at(at + 1)}`
    const grey = (share: number): string => `rgb(${Math.round(share * 255)} ${Math.round(share * 255)} ${Math.round(share * 255)})`
    for (const match of content.matchAll(token)) {
      const [, hex, literal, named, number, , operator] = match
      if (hex !== undefined) strings.push(Buffer.from(hex.replaceAll(/\s/g, ''), 'hex'))
      else if (literal !== undefined) strings.push(Buffer.from(literal.replaceAll(/\\(\d{3}|[\s\S])/g, (_, it: string) => (/\d{3}/.test(it) ? String.fromCharCode(Number.parseInt(it, 8)) : it)), 'latin1'))
      else if (named !== undefined) name = named
      else if (number !== undefined) numbers.push(Number(number))
      else if (operator !== undefined) {
        switch (operator) {
          case 'q':
            kept.push({ matrix, fill })
            break
          case 'Q':
            ;({ matrix, fill } = kept.pop() ?? { matrix: start, fill })
            break
          case 'cm':
            matrix = times(numbers.slice(-6) as unknown as Matrix, matrix)
            break
          case 'rg':
            fill = `rgb(${numbers.slice(-3).map((it) => Math.round(it * 255)).join(' ')})`
            break
          case 'g':
            fill = grey(numbers.at(-1) ?? 0)
            break
          case 'm':
            path += `M${point(-2)}`
            break
          case 'l':
            path += `L${point(-2)}`
            break
          case 'c':
            path += `C${point(-6)} ${point(-4)} ${point(-2)}`
            break
          case 'h':
            path += 'Z'
            break
          case 're': {
            const [x = 0, y = 0, width = 0, height = 0] = numbers.slice(-4)
            path += `M${x} ${y}h${width}v${height}h${-width}Z`
            break
          }
          case 'f':
          case 'f*':
          case 'B':
          case 'B*':
            this.shapes.push(`<path fill="${fill}"${operator.includes('*') ? ' fill-rule="evenodd"' : ''} transform="matrix(${matrix.join(' ')})" d="${path}"/>`)
            path = ''
            break
          case 'n':
          case 'S':
            path = ''
            break
          case 'Tf':
            font = this.#font(fonts.get(name))
            break
          case 'Tj':
          case 'TJ':
            for (const it of strings) line += this.#read(it, font)
            break
          case 'ET':
            this.text.push(line)
            line = ''
            break
          case 'Do': {
            const form = this.things.get(forms.get(name) ?? -1)
            const [, own] = /\/Matrix\s*\[([^\]]*)\]/.exec(form?.head ?? '') ?? []
            if (form?.stream && form.head.includes('/Form')) this.run(form.stream.toString('latin1'), form.head, own ? times(own.trim().split(/\s+/).map(Number) as unknown as Matrix, matrix) : matrix)
            break
          }
        }
        numbers = []
        strings = []
      }
    }
  }

  #font(ref: number | undefined): FontMap | undefined {
    if (ref === undefined) return undefined
    const known = this.#fonts.get(ref)
    if (known) return known
    const [map] = refsAfter(this.things.get(ref)?.head ?? '', 'ToUnicode')
    const made = fontMap(this.things.get(map ?? -1)?.stream?.toString('latin1') ?? '')
    this.#fonts.set(ref, made)
    return made
  }

  #read(codes: Buffer, font: FontMap | undefined): string {
    if (!font) return codes.toString('latin1')
    let text = ''
    for (let at = 0; at + font.bytesPerCode <= codes.length; at += font.bytesPerCode) text += font.of.get(codes.readUIntBE(at, font.bytesPerCode)) ?? ''
    return text
  }
}
