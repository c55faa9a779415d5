import { Lab } from '../../src/projections/lab.ts'
import { manyEntries } from './history.ts'
import { median, millisecondsText, timed, type Figure } from './figure.ts'

/** All projections of a log folded from nothing, against one JSON.parse of each entry; alternating. */
export const foldAgainstParse = async (count = 100_000, times = 5): Promise<Figure> => {
  const arrived = manyEntries(count)
  const texts = arrived.map((it) => JSON.stringify(it))
  const folds: number[] = []
  const parses: number[] = []
  for (let time = 0; time < times; time++) {
    parses.push(await timed(() => { for (const text of texts) JSON.parse(text) }))
    folds.push(await timed(() => {
      const lab = new Lab()
      lab.add(arrived)
      if (lab.ledger.lines.length < count / 2) throw new Error('the log was not folded')
    }))
  }
  const ratio = median(folds) / median(parses)
  return {
    what: `fold of ${count.toLocaleString('en')} entries into all projections`, figure: millisecondsText(median(folds)),
    against: `JSON.parse of each, ${millisecondsText(median(parses))}`, ratio, goal: '≤ 2 ×', isMet: ratio <= 2,
  }
}
