import { createCanvas } from '@napi-rs/canvas'
import { spawnSync } from 'node:child_process'
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import sharp from 'sharp'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import type { Box, Pixels } from '../../src/reader/picture.ts'
import type { ReadLine } from '../../src/terminal/read.ts'
import { cleanDisplay } from '../reader/drawing.ts'

const top = new URL('../..', import.meta.url).pathname

const run = (args: string[], input = ''): { status: number | null; out: ReadLine[]; err: string } => {
  const { status, stdout, stderr } = spawnSync(process.execPath, ['--import', 'tsx', 'src/terminal/read.ts', ...args], { cwd: top, input, encoding: 'utf8' })
  return { status, out: stdout.split('\n').filter(Boolean).map((line) => JSON.parse(line) as ReadLine), err: stderr }
}

const pngOf = ({ width, height, data }: Pixels): Buffer => {
  const canvas = createCanvas(width, height)
  const context = canvas.getContext('2d')
  const image = context.createImageData(width, height)
  image.data.set(data)
  context.putImageData(image, 0, 0)
  return canvas.toBuffer('image/png')
}

describe('npm run read', () => {
  const folder = mkdtempSync(join(tmpdir(), 'bathkeeper-read-'))
  const at = (name: string): string => join(folder, name)
  const meter = pngOf(cleanDisplay('28.53', 3))
  const box: Box = { x: 100, y: 20, width: 440, height: 200 }
  const boxed = (file: string, where = box): string => JSON.stringify({ file, box: [where.x, where.y, where.width, where.height] })

  beforeAll(async () => {
    writeFileSync(at('meter.png'), meter)
    await sharp(meter).jpeg({ quality: 90 }).toFile(at('meter.jpg'))
    // Held sideways: the pixels lie on their side and the mark says how to turn them.
    await sharp(meter).rotate(-90).jpeg().withMetadata({ orientation: 6 }).toFile(at('sideways.jpg'))
    await sharp({ create: { width: 8200, height: 6200, channels: 3, background: '#c8d0bc' } }).composite([{ input: await sharp(meter).resize(2560).toBuffer(), left: 2800, top: 2600 }]).jpeg().toFile(at('large.jpg'))
    await sharp({ create: { width: 480, height: 360, channels: 3, background: '#000000' } }).png().toFile(at('black.png'))
    // A header that claims 20,000 × 20,000 pixels.
    const huge = Buffer.from(meter)
    huge.writeUInt32BE(20_000, 16)
    huge.writeUInt32BE(20_000, 20)
    writeFileSync(at('huge.png'), huge)
    writeFileSync(at('notes.jpg'), 'not a picture at all')
    writeFileSync(at('cut.png'), meter.subarray(0, meter.length >> 1))
  })
  afterAll(() => rmSync(folder, { recursive: true, force: true }))

  it('reads a batch from a file, line for line, in order', () => {
    writeFileSync(at('batch.jsonl'), [boxed(at('meter.png')), '', boxed(at('meter.jpg')), JSON.stringify({ file: at('meter.png') })].join('\n'))
    const { status, out } = run(['batch', at('batch.jsonl')])
    expect(status).toBe(0)
    expect(out.map(({ file, text, certain }) => ({ file, text, certain }))).toEqual([
      { file: at('meter.png'), text: '28.53', certain: true },
      { file: at('meter.jpg'), text: '28.53', certain: true },
      { file: at('meter.png'), text: '28.53', certain: true },
    ])
    for (const line of out) {
      expect(Object.keys(line)).toEqual(['file', 'text', 'certain', 'ms'])
      expect(line.ms).toBeGreaterThan(0)
    }
  }, 60_000)

  it('is certain of clean displays of any cut, boxed closely or not at all', () => {
    const seeds = Array.from({ length: 8 }, (_, index) => index + 1)
    for (const seed of seeds) writeFileSync(at(`${seed}.png`), pngOf(cleanDisplay('28.53', seed)))
    const asked = seeds.flatMap((seed) => [boxed(at(`${seed}.png`)), JSON.stringify({ file: at(`${seed}.png`) })])
    const { out } = run(['batch', '-'], asked.join('\n'))
    expect(out.map(({ text }) => text)).toEqual(asked.map(() => '28.53'))
    expect(out.filter(({ certain }) => certain).length).toBeGreaterThanOrEqual(asked.length - 1)
  }, 60_000)

  it('turns a photograph upright and takes a 50-megapixel one down while decoding', () => {
    const { out } = run(['batch', '-'], [boxed(at('sideways.jpg')), boxed(at('large.jpg'), { x: 3200, y: 2680, width: 1760, height: 800 })].join('\n'))
    expect(out.map(({ text }) => text)).toEqual(['28.53', '28.53'])
  }, 60_000)

  it('says by code why it refuses, and goes on', () => {
    const asked = [boxed(at('black.png')), boxed(at('notes.jpg')), boxed(at('cut.png')), boxed(at('none.jpg')), boxed(at('huge.png')), boxed(at('meter.png'), { x: 900, y: 0, width: 50, height: 50 }), 'nonsense', '{"file": 7}', boxed(at('meter.png'))]
    const { status, out } = run(['batch', '-'], asked.join('\n'))
    expect(out.map(({ text, certain, refusal }) => refusal ?? { text, certain })).toEqual(['tooDark', 'notAPicture', 'notAPicture', 'noFile', 'pictureTooLarge', 'boxOutside', 'badLine', 'badLine', { text: '28.53', certain: true }])
    expect(status).toBe(1)
  }, 60_000)

  it('explains itself when asked wrongly', () => {
    const { status, out, err } = run(['bath'])
    expect(status).toBe(2)
    expect(out).toEqual([])
    expect(err).toContain('batch <file.jsonl | ->')
  }, 60_000)
})
