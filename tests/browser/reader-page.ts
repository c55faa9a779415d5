import { openReader, type ReaderDoor, type ReaderLimits } from '../../src/device/reader.ts'
import type { ReaderFiles } from '../../src/device/reader-worker.ts'
import { createTrustScript } from '../../src/device/trusted.ts'
import { readMeter, type MeterReading } from '../../src/reader/reader.ts'

/** What the test calls in the page: opens the door once, reads a picture by its address, closes. */
export interface ReaderPage {
  open(files: Omit<ReaderFiles, 'trustScript'>, limits: Partial<ReaderLimits>): Promise<string>
  read(picture: string, box: { x: number; y: number; width: number; height: number }): Promise<Pick<MeterReading, 'text' | 'certain'> | string>
  passMilliseconds(): number[]
  close(): void
}

const codeOf = (fault: unknown): string => (fault as { code?: string }).code ?? String(fault)
const trustScript = createTrustScript()
let door: ReaderDoor | null = null
let passes: number[] = []

const page: ReaderPage = {
  open: async (files, limits) => {
    try {
      door = await openReader({ ...files, trustScript }, limits)
      return 'open'
    } catch (fault) {
      return codeOf(fault)
    }
  },
  read: async (picture, box) => {
    const image = await createImageBitmap(await (await fetch(picture)).blob())
    const canvas = new OffscreenCanvas(image.width, image.height)
    const context = canvas.getContext('2d')
    if (!context || !door) return 'no door'
    context.drawImage(image, 0, 0)
    const { recognise } = door
    try {
      const { text, certain } = await readMeter(context.getImageData(0, 0, image.width, image.height), box, null, async (line) => {
        const began = performance.now()
        const seen = await recognise(line)
        passes.push(performance.now() - began)
        return seen
      })
      return { text, certain }
    } catch (fault) {
      return codeOf(fault)
    }
  },
  passMilliseconds: () => {
    const all = passes
    passes = []
    return all
  },
  close: () => door?.close(),
}

;(globalThis as unknown as { reader: ReaderPage }).reader = page
