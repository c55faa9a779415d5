import type { GrayImage } from './picture.ts'

/** One glyph as the recogniser saw it. */
export interface Symbol {
  text: string
  /** 0 to 1, the recogniser's own; it is sure of itself more often than it is right. */
  confidence: number
}

export interface Recognised {
  symbols: Symbol[]
}

/** The port: reads one line image. */
export type Recognise = (line: GrayImage) => Promise<Recognised>
