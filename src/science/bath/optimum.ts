import { solve } from 'yalps'

/** Σ coefficient × variable, by the variable's name. */
export type Sum = Readonly<Record<string, number>>

export interface Row {
  sum: Sum
  atLeast?: number
  atMost?: number
}

/** Numbers this small, in a program whose coefficients and answers lie about 1, are artefacts of its arithmetic. */
export const negligible = 1e-9

/**
 * The variables, none below 0, that make `objective` least within `rows`; undefined when the rows contradict each other.
 *
 * Solved by the simplex method of YALPS. The program must be scaled so that its coefficients and answers lie about 1, and its objective
 * must have a least value. Throws an Error (a fault of ours) otherwise.
 */
export const optimum = (objective: Sum, rows: readonly Row[]): Sum | undefined => {
  const columns = new Map<string, [string, number][]>()
  const enter = (key: string, sum: Sum): void => {
    for (const [name, coefficient] of Object.entries(sum)) {
      const column = columns.get(name)
      if (column) column.push([key, coefficient])
      else columns.set(name, [[key, coefficient]])
    }
  }
  enter('objective', objective)
  rows.forEach((row, index) => enter(`row ${index}`, row.sum))
  const { status, variables } = solve(
    {
      direction: 'minimize',
      objective: 'objective',
      constraints: new Map(
        rows.map(({ atLeast, atMost }, index) => [
          `row ${index}`,
          { ...(atLeast === undefined ? {} : { min: atLeast }), ...(atMost === undefined ? {} : { max: atMost }) },
        ]),
      ),
      variables: columns,
    },
    { precision: 1e-11, includeZeroVariables: true },
  )
  if (status === 'infeasible') return undefined
  if (status !== 'optimal') throw new Error(`the linear program ended as ${status}`)
  return Object.fromEntries(variables)
}
