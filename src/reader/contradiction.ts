import type { DisplayKind } from './expectation.ts'
import type { SegmentReading } from './segments.ts'

/** Below this margin the geometry is guessing and is not heard. */
export const clearMargin = 0.3
/** Dots and print pass for segments up to about here: other figures count only beyond, unless the display is known to be of segments. */
const figuresMargin = 0.5

/**
 * Whether the segments clearly say something else. The geometry easily takes a frame or a unit for a figure at either end and overlooks
 * a faint point or minus, so only three things count: other figures in a row, a point elsewhere, a minus that was not read.
 */
export const contradicts = (text: string, segments: SegmentReading | null, kind?: DisplayKind): boolean => {
  if (!segments || segments.margin < clearMargin || kind === 'other') return false
  const figures = text.replace(/[.-]/g, '')
  const seen = segments.text.replace(/[.-]/g, '')
  const at = seen.indexOf(figures)
  if (at < 0) return kind === 'segments' || segments.margin >= figuresMargin
  if (segments.text.startsWith('-') && !text.startsWith('-')) return true
  const point = segments.text.replace('-', '').indexOf('.')
  return point >= 0 && (!text.includes('.') || text.replace('-', '').indexOf('.') !== point - at)
}
