import { catalogue } from '../../science/catalogue.ts'
import { Refusal } from '../../science/refusal.ts'

export interface Problem {
  error: string
  field: string
}

const longest = 60

/** A given value as one would quote it; a long one is cut, and what JSON cannot write (an infinity) is named. */
const quoted = (value: unknown): string => {
  const text = typeof value === 'number' ? String(value) : JSON.stringify(value)
  return text.length > longest ? `${text.slice(0, longest)}…` : text
}

/** One line that says which field, which value and what it takes. A fault of ours is not a refusal and is thrown on. */
export const problemText = (error: unknown): Problem => {
  if (!(error instanceof Refusal)) throw error
  const { code, field, value, allowed } = error
  const place = field || 'the inputs'
  const given = value === undefined ? '' : ` ${quoted(value)}`
  switch (code) {
    case 'missing':
      return { field, error: `${place} ${field ? 'is' : 'are'} missing: it takes ${allowed}` }
    case 'unknownField':
      return { field, error: `${field} is not a field here; there are ${allowed}` }
    case 'exactlyOne':
      return { field, error: `${place} takes ${allowed}; given: ${Array.isArray(value) && value.length > 0 ? value.join(', ') : 'none of them'}` }
    case 'noAnswer':
      return { field, error: `${place}${given} ${field ? 'has' : 'have'} no answer: it takes ${allowed}` }
    default:
      return { field, error: `${place}${given} ${field ? 'is' : 'are'} refused: it takes ${allowed}` }
  }
}

/** Names the ids that are nearest in spelling. */
export const unknownId = (id: string): string => {
  const near = catalogue
    .map((it) => ({ id: it.id, distance: distance(it.id.toLowerCase(), id.toLowerCase().slice(0, longest)) }))
    .filter((it) => it.distance <= 4 || it.id.split('.')[0] === id.split('.')[0])
    .sort((a, b) => a.distance - b.distance)
    .slice(0, 3)
    .map((it) => it.id)
  return `there is no calculation ${quoted(id)}${near.length ? `; perhaps ${near.join(', ')}` : '; "calc list" names them all'}`
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
