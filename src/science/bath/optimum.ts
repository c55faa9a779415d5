/** Σ coefficient × variable, by the variable's name. */
export type Sum = Readonly<Record<string, number>>

export interface Row {
  sum: Sum
  atLeast?: number
  atMost?: number
}

/** Numbers this small, where coefficients and answers lie about 1, are artefacts of arithmetic. */
export const negligible = 1e-9

/** One row an inequality, one column a variable, a slack or an artificial variable; the last column is the right side. */
interface Tableau {
  rows: Float64Array[]
  /** The variable that each row is solved for. */
  basis: number[]
  width: number
  /** Variables that stay at 0 because moving them would worsen an objective already settled. */
  barred: boolean[]
}

/**
 * The variables, none below 0, that make the first objective least within the rows; of all such, the second; and so on.
 * Undefined when the rows contradict each other. Coefficients and answers should lie about 1, and each objective must have a least value.
 *
 * Simplex method of Dantzig (1947) on a dense tableau, with the rule of Bland (1977), which cannot cycle, after a long run of steps.
 * That the rows can be met at all is the very first objective (the sum of artificial variables). Between objectives, variables
 * with a reduced cost are barred, so that no tolerance loosens what is settled. The answer is solved for once more from the
 * rows as they were given, which takes out the rounding of the steps.
 *
 * Own code because the package of a few kilobytes that was tried, YALPS 0.6.4, has no rule against cycling: of 3000 random baths it cycled
 * in some and lost the answer in others, 15 in all. A large solver (HiGHS) agrees with the answers found here.
 */
export const optimum = (objectives: readonly Sum[], given: readonly Row[]): Sum | undefined => {
  const names = [...new Set([...objectives, ...given.map((row) => row.sum)].flatMap((sum) => Object.keys(sum)))]
  const place = new Map(names.map((name, index) => [name, index]))
  const inequalities = given.flatMap(({ sum, atLeast, atMost }) => [
    ...(atMost === undefined ? [] : [{ sum, sign: 1, limit: atMost }]),
    ...(atLeast === undefined ? [] : [{ sum, sign: -1, limit: -atLeast }]),
  ])
  const starts = startsOf(inequalities)
  const firstArtificial = names.length + inequalities.length
  const width = firstArtificial + starts.filter((start) => start === 'artificial').length

  const basis: number[] = []
  let artificials = 0
  const rows = inequalities.map(({ sum, sign, limit }, index) => {
    const row = new Float64Array(width + 1)
    const flip = limit < 0 ? -1 : 1
    for (const [name, coefficient] of Object.entries(sum)) row[place.get(name)!] = flip * sign * coefficient
    row[names.length + index] = flip
    row[width] = flip * limit
    const start = starts[index]!
    const column = start === 'slack' ? names.length + index : start === 'artificial' ? firstArtificial + artificials++ : place.get(start.name)!
    if (start === 'artificial') row[column] = 1
    basis.push(column)
    return row
  })
  const tableau: Tableau = {
    rows: rows.map((row, index) => row.map((entry) => entry / row[basis[index]!]!)),
    basis,
    width,
    barred: Array.from({ length: width }, () => false),
  }

  if (artificials > 0) {
    const unwanted = costsOf(width, (column) => (column >= firstArtificial ? 1 : 0))
    settle(tableau, unwanted)
    const unmet = basis.reduce((sum, column, index) => sum + unwanted[column]! * tableau.rows[index]![width]!, 0)
    if (unmet > negligible) return undefined
  }
  for (const objective of objectives) settle(tableau, costsOf(width, (column) => objective[names[column] ?? ''] ?? 0))

  const values = basicValues(rows, basis, width)
  return Object.fromEntries(names.map((name, column) => [name, values[column]!]))
}

type Start = 'slack' | 'artificial' | { name: string }

/**
 * What each row is solved for at the start: its slack; where that would be negative, a variable that stands in this row alone and
 * can take up the whole of it (as a miss does); else an artificial variable.
 */
const startsOf = (inequalities: readonly { sum: Sum; sign: number; limit: number }[]): Start[] => {
  const uses = new Map<string, number>()
  for (const { sum } of inequalities) for (const name of Object.keys(sum)) uses.set(name, (uses.get(name) ?? 0) + 1)
  return inequalities.map(({ sum, sign, limit }) => {
    if (limit >= 0) return 'slack'
    const own = Object.entries(sum).find(([name, coefficient]) => uses.get(name) === 1 && -sign * coefficient > negligible)
    return own ? { name: own[0] } : 'artificial'
  })
}

const costsOf = (width: number, cost: (column: number) => number): Float64Array => Float64Array.from({ length: width }, (_, column) => cost(column))

/** Steps until no variable that may move makes the objective less, then bars those that would make it more. */
const settle = (tableau: Tableau, costs: Float64Array): void => {
  const { rows, basis, width, barred } = tableau
  const greatest = costs.reduce((most, cost) => Math.max(most, Math.abs(cost)), 0) || 1
  const reduced = Float64Array.from({ length: width + 1 }, (_, column) => (costs[column] ?? 0) / greatest)
  rows.forEach((row, index) => {
    const cost = costs[basis[index]!]! / greatest
    if (cost !== 0) for (let column = 0; column <= width; column++) reduced[column]! -= cost * row[column]!
  })
  const patience = 4 * (width + rows.length)
  for (let step = 0; ; step++) {
    if (step > 50 * patience) throw new Error('the simplex method does not come to an end')
    const careful = step > patience
    const entering = enteringColumn(tableau, reduced, careful)
    if (entering < 0) break
    const leaving = leavingRow(tableau, entering, careful)
    if (leaving < 0) throw new Error('an objective without a least value')
    pivot(tableau, reduced, leaving, entering)
  }
  for (let column = 0; column < width; column++) if (reduced[column]! > negligible && !basis.includes(column)) barred[column] = true
}

const enteringColumn = ({ width, barred }: Tableau, reduced: Float64Array, careful: boolean): number => {
  let best = -1
  let least = -negligible
  for (let column = 0; column < width; column++) {
    if (barred[column] || !(reduced[column]! < least)) continue
    best = column
    if (careful) return best
    least = reduced[column]!
  }
  return best
}

/** The row that first comes to 0; of several, the one with the greatest pivot or, when careful, with the first variable. */
const leavingRow = ({ rows, basis, width }: Tableau, entering: number, careful: boolean): number => {
  let best = -1
  let least = Infinity
  rows.forEach((row, index) => {
    const pivotValue = row[entering]!
    if (!(pivotValue > negligible)) return
    const ratio = Math.max(0, row[width]!) / pivotValue
    const ties = best >= 0 && Math.abs(ratio - least) <= 1e-12 * Math.max(1, least)
    const preferred = best < 0 || (careful ? basis[index]! < basis[best]! : pivotValue > rows[best]![entering]!)
    if (ties ? preferred : ratio < least) {
      best = index
      least = ties ? Math.min(least, ratio) : ratio
    }
  })
  return best
}

const pivot = ({ rows, basis }: Tableau, reduced: Float64Array, leaving: number, entering: number): void => {
  const row = rows[leaving]!
  const value = row[entering]!
  for (let column = 0; column < row.length; column++) row[column]! /= value
  for (const other of [...rows, reduced]) {
    const factor = other[entering]!
    if (other === row || factor === 0) continue
    for (let column = 0; column < row.length; column++) other[column]! -= factor * row[column]!
    other[entering] = 0
  }
  basis[leaving] = entering
}

/** Solves the given rows for the variables of the basis (Gauss, greatest pivot); all others are 0. */
const basicValues = (rows: readonly Float64Array[], basis: readonly number[], width: number): Float64Array => {
  const system = rows.map((row) => Float64Array.from([...basis.map((column) => row[column]!), row[width]!]))
  const size = system.length
  for (let column = 0; column < size; column++) {
    let at = column
    for (let row = column + 1; row < size; row++) if (Math.abs(system[row]![column]!) > Math.abs(system[at]![column]!)) at = row
    const chosen = system[at]!
    system[at] = system[column]!
    system[column] = chosen
    for (let row = 0; row < size; row++) {
      const factor = row === column ? 0 : system[row]![column]! / chosen[column]!
      if (factor !== 0) for (let entry = column; entry <= size; entry++) system[row]![entry]! -= factor * chosen[entry]!
    }
  }
  const values = new Float64Array(width)
  basis.forEach((column, index) => (values[column] = Math.max(0, system[index]![size]! / system[index]![index]!)))
  return values
}
