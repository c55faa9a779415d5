import type { Fields, ListField } from '../field.ts'

export const valuesField = {
  kind: 'list',
  says: 'readings in the order of time',
  atLeast: 1,
  atMost: 10_000,
  of: { kind: 'number', unit: '1', says: 'reading' },
} as const satisfies ListField

export const outField = {
  kind: 'list',
  says: 'points beyond a limit, counted from 0; a point on a limit is inside',
  of: { kind: 'number', unit: '1', says: 'index', whole: true },
} as const satisfies ListField

export const gapFields = {
  gapsBefore: {
    kind: 'list',
    says: 'points, counted from 0, before which a reading was missed: no moving range, trend or alternation reaches across',
    of: { kind: 'number', unit: '1', says: 'index', whole: true, atLeast: 0 },
    optional: true,
  },
} as const satisfies Fields

export const indexesWhere = <T>(list: readonly T[], holds: (entry: T, index: number) => boolean): number[] =>
  list.flatMap((entry, index) => (holds(entry, index) ? [index] : []))

/** What `next` makes of each entry and of its own result for the entry before. */
export const running = (list: readonly number[], start: number, next: (before: number, entry: number) => number): number[] => {
  const results: number[] = []
  for (const entry of list) results.push(next(results.at(-1) ?? start, entry))
  return results
}
