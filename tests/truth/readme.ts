import { catalogue } from '../../src/science/catalogue.ts'
import { groupedBy, truthCases, type TruthCase } from './cases.ts'
import { measure, type Miss } from './measure.ts'

export const markers = { from: '<!-- truth table -->', to: '<!-- /truth table -->' } as const

/** Errors below this are the arithmetic of the machine and differ from one to the next. */
const smallestShown = 1e-9
export const short = (number: number): string => (number === 0 ? '0' : Number(number.toPrecision(2)).toString())
const shown = (error: number): string => (error < smallestShown ? '< 1e-9' : short(error))

const mostSources = 3
const mostLetters = 70
const firstClause = (source: string): string => {
  const clause = source.split(/ \(|; |(?<! ): |, (?:evaluated|quoted|table|worked|through|look-up|data)/)[0]!.trim()
  return clause.length > mostLetters ? `${clause.slice(0, clause.lastIndexOf(' ', mostLetters))} …` : clause
}

/** Published sources first; what was worked out apart and refusals only where nothing else is there. */
const sourcesOf = (cases: readonly TruthCase[]): string => {
  const numbers = cases.filter(({ expect }) => !('refuses' in expect))
  const published = numbers.filter(({ seen }) => seen !== 'computed')
  const names = [...new Set((published.length ? published : numbers.length ? numbers : cases).map(({ source }) => firstClause(source)))]
  return [...names.slice(0, mostSources), ...(names.length > mostSources ? [`${names.length - mostSources} more`] : [])].join('; ')
}

const nearest = (numbers: readonly Miss[]): Miss | undefined =>
  numbers.reduce<Miss | undefined>((worst, it) => (!worst || it.error / (it.tolerance ?? 1) > worst.error / (worst.tolerance ?? 1) ? it : worst), undefined)

/** One line a calculation: how many values hold it, and the field that comes nearest to its tolerance. Cases that are listed as disagreeing are counted apart. */
export const condensedTable = (): string => {
  const byCalculation = groupedBy(truthCases(), ({ calculation }) => calculation)
  const lines = catalogue.flatMap(({ id }) => {
    const cases = byCalculation.get(id) ?? []
    const agreeing = cases.filter(({ disagrees }) => disagrees === undefined)
    const numbers = agreeing.flatMap((it) => measure(it).numbers)
    const worst = nearest(numbers)
    const apart = cases.length - agreeing.length
    return `| \`${id}\` | ${sourcesOf(agreeing)} | ${numbers.length}${apart ? ` (${apart} disagree)` : ''} | ${worst ? `${worst.field} ${shown(worst.error)}` : 'words and refusals'} | ${worst ? short(worst.tolerance ?? Number.NaN) : ''} |`
  })
  return ['| calculation | held against | values | worst error | tolerance |', '| --- | --- | ---: | --- | ---: |', ...lines].join('\n')
}

/** A text with what stands between two markers replaced. */
export const between = (text: string, { from, to }: { from: string; to: string }, inside: string): string => {
  const start = text.indexOf(from)
  const end = text.indexOf(to, start)
  if (start < 0 || end < 0) throw new Error(`no ${from} … ${to} in the text`)
  return `${text.slice(0, start + from.length)}\n${inside}\n${text.slice(end)}`
}
