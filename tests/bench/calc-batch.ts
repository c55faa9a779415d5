import { Readable } from 'node:stream'
import { catalogue } from '../../src/science/catalogue.ts'
import { batch } from '../../src/terminal/calc/batch.ts'
import { timed, type Figure } from './figure.ts'

/** The worked examples of the whole catalogue, one after another, through `calc batch` in one process. */
export const calcBatch = async (cases = 10_000): Promise<Figure> => {
  const lines = Array.from({ length: cases }, (_, index) => {
    const { id, example } = catalogue[index % catalogue.length]!
    return JSON.stringify({ id, inputs: example.inputs })
  })
  let refused = 0
  const milliseconds = await timed(() =>
    batch(Readable.from([lines.join('\n')]), (line) => {
      if (!line.startsWith('{"ok":true')) refused++
    }),
  )
  if (refused) throw new Error(`${refused} of ${cases} worked examples were refused`)
  return {
    what: `\`calc batch\`, ${cases.toLocaleString('en')} mixed cases of ${catalogue.length} calculations, one process`,
    figure: `${(milliseconds / 1000).toFixed(1)} s`, against: '', ratio: null, goal: '≤ 5 s', isMet: milliseconds <= 5000,
  }
}
