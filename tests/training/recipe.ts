/** How the model is made. */
export const recipe = {
  network: '[1,48,0,1 Ct3,3,16 Mp3,3 Lfys64 Lbx96 O1c16]',
  scenes: 9000,
  linesEach: 3,
  scenesInDocument: 500,
  /** First quickly, then finely. */
  stages: [
    { learningRate: 1e-3, untilIteration: 90_000 },
    { learningRate: 2e-4, untilIteration: 135_000 },
  ],
} as const

export type Recipe = Omit<typeof recipe, 'scenes' | 'scenesInDocument' | 'stages'> & { scenes: number; scenesInDocument: number; stages: readonly { learningRate: number; untilIteration: number }[] }

/** Every step in a few minutes, to see that each works here. What comes of it reads nothing. */
export const trial: Recipe = {
  ...recipe,
  scenes: 40,
  scenesInDocument: 20,
  stages: [
    { learningRate: 1e-3, untilIteration: 200 },
    { learningRate: 2e-4, untilIteration: 300 },
  ],
}
