import { Lab } from '../../src/projections/lab.ts'
import { understand } from '../../src/record/entry.ts'
import { manyEntries } from './history.ts'
import { median, millisecondsText, timed, type Figure } from './figure.ts'

/** All projections of a log folded from nothing, against one JSON.parse of each entry; alternating. */
export const foldAgainstParse = async (count = 100_000, times = 5): Promise<Figure> => {
  const arrived = manyEntries(count)
  const texts = arrived.map((it) => JSON.stringify(it))
  const folds: number[] = []
  const checks: number[] = []
  const parses: number[] = []
  for (let time = 0; time < times; time++) {
    parses.push(await timed(() => { for (const text of texts) JSON.parse(text) }))
    checks.push(await timed(() => { for (const { entry } of arrived) if (understand(entry).status !== 'valid') throw new Error('an entry does not fit') }))
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
    note: `${millisecondsText(median(checks))} of it is checking each entry against the schema of its kind; a cold start folds from a snapshot`,
  }
}
