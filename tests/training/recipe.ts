import { seeds } from './evaluate.ts'
import type { Course } from './lines.ts'

interface Stage {
  courses: readonly Course[]
  learningRate: number
  /** Counted from the first stage on. */
  untilIteration: number
  /** Lines that are read without a fault are passed over until so many others have been learned from. */
  perfectDelay: number
}

/** How the model is made. */
export const recipe = {
  network: '[1,48,0,1 Ct3,3,16 Mp3,3 Lfys64 Lbx96 O1c16]',
  courses: {
    figures: { firstSeed: seeds.training, scenes: 9000, linesEach: 3 },
    voices: { firstSeed: 20_000, scenes: 2250, linesEach: 6 },
    words: { firstSeed: 30_000, scenes: 400, linesEach: 6 },
  } satisfies Record<Course, { firstSeed: number; scenes: number; linesEach: number }>,
  scenesInDocument: 250,
  /** First quickly, then finely; then once more on the cuts that vote. */
  stages: [
    { courses: ['figures'], learningRate: 1e-3, untilIteration: 90_000, perfectDelay: 0 },
    { courses: ['figures'], learningRate: 2e-4, untilIteration: 135_000, perfectDelay: 0 },
    { courses: ['voices', 'words'], learningRate: 5e-4, untilIteration: 155_000, perfectDelay: 1 },
    { courses: ['voices', 'words'], learningRate: 2e-4, untilIteration: 170_000, perfectDelay: 1 },
    { courses: ['voices', 'words'], learningRate: 1e-4, untilIteration: 180_000, perfectDelay: 0 },
  ] satisfies Stage[],
} as const
