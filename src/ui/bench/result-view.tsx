import type { Field, Fields } from '../../science/field.ts'
import { useWords } from '../app-context.ts'
import type { EdgeUnits } from './form.ts'
import { headText, namePlain, workedText } from '../value-text.ts'

/** Four figures of an answer are read; the working beside it keeps six. */
const resultFigures = 4

/** The outputs of a calculation: single numbers large, lists and tables as rows. A unit that is an output stands beside its numbers. */
export const ResultView = ({ fields, result, edge }: { fields: Fields; result: Record<string, unknown>; edge: EdgeUnits }) => (
  <dl class="stack">
    {shownFields(fields, result).map(([name, field]) => (
      <div key={name}>
        <dt class="small quiet">{headText(field.says || namePlain(name))}</dt>
        <dd><ValueView field={field} value={result[name]} edge={edge} large /></dd>
      </div>
    ))}
  </dl>
)

const shownFields = (fields: Fields, result: Record<string, unknown>): [string, Field][] => {
  const asUnits = new Set(Object.values(fields).flatMap((field) => (field.kind === 'number' && field.unitIn ? [field.unitIn] : [])))
  return Object.entries(fields).flatMap(([name, field]): [string, Field][] => {
    if (result[name] === undefined || asUnits.has(name)) return []
    return [[name, field.kind === 'number' && field.unitIn ? { ...field, unit: String(result[field.unitIn]) } : field]]
  })
}

const ValueView = ({ field, value, edge, large = false }: { field: Field; value: unknown; edge: EdgeUnits; large?: boolean }) => {
  const words = useWords().bench
  if (value === null) return <span>{words.cannotBeSaid}</span>
  switch (field.kind) {
    case 'number': {
      const unit = edge(field.unit)
      return (
        <span class={large ? 'result-number' : undefined}>
          {workedText(unit.toShown(value as number), resultFigures)}
          {unit.shown === '1' ? null : <span class="unit"> {unit.shown}</span>}
        </span>
      )
    }
    case 'flag':
      return <strong>{value ? words.yes : words.no}</strong>
    case 'choice':
    case 'text':
      return <span>{field.kind === 'choice' ? namePlain(String(value)) : String(value)}</span>
    case 'list': {
      const entries = value as unknown[]
      if (!entries.length) return <span>{words.none}</span>
      if (field.of.kind === 'number')
        return (
          <ul class="number-list">
            {entries.map((entry, index) => <li key={index}><ValueView field={field.of} value={entry} edge={edge} /></li>)}
          </ul>
        )
      return (
        <ul class="rows">
          {entries.map((entry, index) => <li key={index} class="row"><ValueView field={field.of} value={entry} edge={edge} /></li>)}
        </ul>
      )
    }
    case 'table':
      return (
        <ul class="rows">
          {Object.entries(value as object).map(([name, entry]) => (
            <li key={name} class="row"><span class="what">{namePlain(name)}</span><span class="value"><ValueView field={field.of} value={entry} edge={edge} /></span></li>
          ))}
        </ul>
      )
    case 'group':
      return (
        <span class="what">
          {Object.entries(field.fields).filter(([name]) => (value as Record<string, unknown>)[name] !== undefined).map(([name, inner], index) => (
            <span key={name}>
              {index ? ' · ' : ''}
              {inner.kind === 'flag' ? `${namePlain(name)}: ` : ''}
              <ValueView field={inner} value={(value as Record<string, unknown>)[name]} edge={edge} />
            </span>
          ))}
        </span>
      )
  }
}
