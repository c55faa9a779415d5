import { useEffect, useRef, useState } from 'preact/hooks'
import type { MeterReader } from '../../device/meter-reader.ts'
import { ReaderFault, type ReaderFaultCode } from '../../device/reader-fault.ts'
import type { Expectation } from '../../reader/expectation.ts'
import type { Pixels } from '../../reader/picture.ts'
import type { MeterReading } from '../../reader/reader.ts'
import { boxOf, type Guide } from './display.ts'
import { drawn } from './still.ts'

/** A reading with the very picture it was read from: that one is kept. */
export interface Shown {
  reading: MeterReading
  canvas: HTMLCanvasElement
  at: number
}

/** Between two readings the thumb gets its turn, and a phone does not run hot. */
const pauseMilliseconds = 120
/** A certain number stays in sight so long, though the hand has moved since. */
const holdMilliseconds = 1500

export const readCanvas = (reader: MeterReader, canvas: HTMLCanvasElement, guide: Guide, expectation: Expectation | null): Promise<MeterReading> => {
  const context = canvas.getContext('2d', { willReadFrequently: true })!
  // Only the box and a little about it: copying a whole picture takes longer than reading it.
  const { x, y, width, height } = boxOf(guide, canvas)
  const [left, top] = [Math.floor(x), Math.floor(y)]
  const { data, width: across, height: down } = context.getImageData(left, top, Math.max(1, Math.ceil(width)), Math.max(1, Math.ceil(height)))
  const pixels: Pixels = { width: across, height: down, data: new Uint8ClampedArray(data.buffer) }
  return reader.read(pixels, { x: x - left, y: y - top, width, height }, expectation)
}

export const faultOf = (thrown: unknown): ReaderFaultCode | 'fault' => (thrown instanceof ReaderFault ? thrown.code : 'fault')

/** Reads what the camera sees, one frame after the other, while it is wanted. */
export const useLive = (
  reader: MeterReader | undefined,
  video: { readonly current: HTMLVideoElement | null },
  guide: Guide,
  expectation: Expectation,
  isWanted: boolean,
  onFault: (code: ReaderFaultCode | 'fault') => void,
): Shown | undefined => {
  const [shown, setShown] = useState<Shown>()
  const now = useRef({ guide, expectation })
  now.current = { guide, expectation }
  useEffect(() => {
    setShown(undefined)
    if (!reader || !isWanted) return
    let isOver = false
    let last: Shown | undefined
    // Two in turn: the one in sight must not be drawn over, since it may be kept.
    const canvases = [document.createElement('canvas'), document.createElement('canvas')]
    const once = async (): Promise<void> => {
      const source = video.current
      if (!source || source.readyState < HTMLMediaElement.HAVE_CURRENT_DATA || source.videoWidth === 0) return
      const canvas = drawn(source, source.videoWidth, source.videoHeight, canvases.find((it) => it !== last?.canvas)!)
      const reading = await readCanvas(reader, canvas, now.current.guide, now.current.expectation)
      const at = performance.now()
      if (isOver || (last?.reading.certain && !reading.certain && at - last.at < holdMilliseconds)) return
      last = { reading, canvas, at }
      setShown(last)
    }
    const run = async (): Promise<void> => {
      while (!isOver) {
        await once()
        await new Promise((resolve) => setTimeout(resolve, pauseMilliseconds))
      }
    }
    run().catch((thrown: unknown) => {
      if (!isOver) onFault(faultOf(thrown))
    })
    return () => {
      isOver = true
    }
  }, [reader, isWanted])
  return shown
}
