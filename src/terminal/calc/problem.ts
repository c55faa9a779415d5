import { catalogue } from '../../science/catalogue.ts'
import { Refusal } from '../../science/refusal.ts'

export interface Problem {
  error: string
  field: string
}

/** One line that says which field, which value and what it takes. A fault of ours is not a refusal and is thrown on. */
export const problemText = (error: unknown): Problem => {
  if (!(error instanceof Refusal)) throw error
  const { code, field, value, allowed } = error
  const given = value === undefined ? '' : ` ${JSON.stringify(value)}`
  switch (code) {
    case 'missing':
      return { field, error: `${field || 'inputs'} is missing: it takes ${allowed}` }
    case 'unknownField':
      return { field, error: `${field} is not a field of this calculation, which has ${allowed}` }
    case 'noAnswer':
      return { field, error: `${field || 'the inputs'}${given} has no answer: it takes ${allowed}` }
    default:
      return { field, error: `${field || 'the inputs'}${given} is refused: it takes ${allowed}` }
  }
}

/** Names the ids that are nearest in spelling. */
export const unknownId = (id: string): string => {
  const near = catalogue
    .map((it) => ({ id: it.id, distance: distance(it.id.toLowerCase(), id.toLowerCase()) }))
    .filter((it) => it.distance <= 4 || it.id.split('.')[0] === id.split('.')[0])
    .sort((a, b) => a.distance - b.distance)
    .slice(0, 3)
    .map((it) => it.id)
  return `there is no calculation "${id}"${near.length ? `; perhaps ${near.join(', ')}` : '; "calc list" names them all'}`
}

/** Edits between two short words (Levenshtein 1966). */
const distance = (a: string, b: string): number => {
  let row = Array.from({ length: b.length + 1 }, (_, index) => index)
  for (let i = 1; i <= a.length; i++) {
    const next = [i]
    for (let j = 1; j <= b.length; j++) next.push(Math.min(row[j]! + 1, next[j - 1]! + 1, row[j - 1]! + (a[i - 1] === b[j - 1] ? 0 : 1)))
    row = next
  }
  return row[b.length]!
}
