import { useId, useState } from 'preact/hooks'
import type { LabPlan } from '../../plan/lab-plan.ts'
import { shiftAt } from '../../plan/shift-time.ts'
import { useApp, useWords } from '../app-context.ts'
import { saveFile } from '../menu/save-file.ts'
import { Button } from '../parts/button.tsx'
import { Card } from '../parts/card.tsx'
import { Choices } from '../parts/field.tsx'

type Kind = 'shift' | 'day' | 'week' | 'all' | 'days'
interface Span {
  from?: number
  to?: number
}
const day = 86_400_000

/** Whole days of the laboratory's calendar, both included. */
const daysBetween = (first: string, last: string, timeZone: string): Span | undefined => {
  try {
    const start = (date: Temporal.PlainDate): number => date.toZonedDateTime(timeZone).epochMilliseconds
    const span = { from: start(Temporal.PlainDate.from(first)), to: start(Temporal.PlainDate.from(last).add({ days: 1 })) }
    return span.from < span.to ? span : undefined
  } catch {
    // Not chosen yet, or a day that the calendar does not have.
    return undefined
  }
}

/** The record of a time that a person chooses, for a spreadsheet or to keep. */
export const SpanCard = ({ plan }: { plan: LabPlan }) => {
  const { archive, now } = useApp()
  const words = useWords().record
  const [kind, setKind] = useState<Kind>('shift')
  const [days, setDays] = useState({ first: '', last: '' })
  const [state, setState] = useState<'idle' | 'busy' | 'nothing' | 'daysMissing'>('idle')
  const span = (): Span | undefined => {
    switch (kind) {
      case 'shift': {
        const { from, to } = shiftAt(plan, now.value)
        return { from, to }
      }
      case 'day':
        return { from: now.value - day }
      case 'week':
        return { from: now.value - 7 * day }
      case 'all':
        return {}
      case 'days':
        return daysBetween(days.first, days.last, plan.timeZone)
    }
  }
  const carry = async (as: 'csv' | 'json'): Promise<void> => {
    const chosen = span()
    if (!chosen) return setState('daysMissing')
    setState('busy')
    let text: string | undefined
    try {
      const it = await archive()
      text = as === 'json' ? await it.record({ laboratory: plan.name, timeZone: plan.timeZone, ...chosen }) : await (await import('./record-table.ts')).recordTable(it, plan, chosen)
    } finally {
      setState('idle')
    }
    if (text === undefined) return setState('nothing')
    const name = `record-${new Date(chosen.from ?? now.value).toISOString().slice(0, 10)}-${kind}`
    if (as === 'csv') saveFile(`${name}.csv`, text, 'text/csv;charset=utf-8')
    else saveFile(`${name}.json`, text)
  }
  return (
    <Card title={words.span}>
      <Choices<Kind> name={words.span} of={(['shift', 'day', 'week', 'all', 'days'] as const).map((value) => ({ value, says: words.spans[value] }))} value={kind} onChange={setKind} />
      {kind === 'days' ? (
        <div class="days">
          <Day name={words.from} value={days.first} onChange={(first) => setDays({ ...days, first })} />
          <Day name={words.to} value={days.last} onChange={(last) => setDays({ ...days, last })} />
        </div>
      ) : null}
      {state === 'daysMissing' ? <p class="problem">{words.daysMissing}</p> : null}
      {state === 'nothing' ? <p role="status">{words.nothing}</p> : null}
      <Button wide notYet={state === 'busy' ? words.preparing : undefined} onPress={() => carry('csv')}>{words.csv}</Button>
      <p class="small quiet">{words.csvMore}</p>
      <Button wide notYet={state === 'busy' ? words.preparing : undefined} onPress={() => carry('json')}>{words.json}</Button>
      <p class="small quiet">{words.jsonMore}</p>
    </Card>
  )
}

const Day = ({ name, value, onChange }: { name: string; value: string; onChange(value: string): void }) => {
  const id = useId()
  return (
    <div class="field">
      <label for={id}>{name}</label>
      <input id={id} type="date" value={value} onInput={(event) => onChange(event.currentTarget.value)} />
    </div>
  )
}
