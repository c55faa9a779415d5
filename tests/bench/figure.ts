import { cpus, loadavg, release, totalmem, type } from 'node:os'

/** One line of the table: what was measured, against what, and what it is to reach. */
export interface Figure {
  what: string
  /** As printed, with its unit: `6,120 entries/s`. */
  figure: string
  against: string
  /** Figure ÷ the other side, where there is one. */
  ratio: number | null
  goal: string
  isMet: boolean | null
  /** What bounds it, where the goal is missed; how it was measured, where that matters. */
  note?: string
}

export const percentile = (values: readonly number[], share: number): number => {
  const sorted = [...values].sort((a, b) => a - b)
  const found = sorted[Math.min(sorted.length - 1, Math.max(0, Math.ceil(share * sorted.length) - 1))]
  if (found === undefined) throw new Error('nothing was measured')
  return found
}
export const median = (values: readonly number[]): number => percentile(values, 0.5)

export const millisecondsText = (value: number): string => `${value < 10 ? value.toFixed(1) : Math.round(value)} ms`
export const perSecondText = (value: number): string => `${Math.round(value).toLocaleString('en')}/s`

export const timed = async (work: () => unknown): Promise<number> => {
  const began = performance.now()
  await work()
  return performance.now() - began
}

/** The load says how far the figures are to be trusted: above the number of processors they waited for others. */
export const machineText = (): string => {
  const [first] = cpus()
  return `${cpus().length} × ${first?.model.trim() ?? 'unknown processor'}, ${Math.round(totalmem() / 2 ** 30)} GB, ${type()} ${release()}, Node ${process.versions.node}, load ${loadavg()[0]!.toFixed(1)}`
}

export const tableOf = (figures: readonly Figure[]): string =>
  [
    '| what | figure | against | ratio | to reach | |',
    '| --- | ---: | --- | ---: | --- | --- |',
    ...figures.map(({ what, figure, against, ratio, goal, isMet, note }) => {
      const met = isMet === null ? '' : isMet ? 'reached' : 'missed'
      return `| ${what} | ${figure} | ${against} | ${ratio === null ? '' : ratio.toFixed(2)} | ${goal} | ${[met, note].filter(Boolean).join(': ')} |`
    }),
  ].join('\n')
