import type { PlanChange } from '../../plan/changes.ts'
import type { WrittenPlan } from '../../plan/written-plan.ts'
import { useWords } from '../app-context.ts'
import { Card } from '../parts/card.tsx'
import { useDates } from '../use-dates.ts'
import { placeOf, type Place } from './place-of.ts'
import { setByText } from './set-by-text.ts'
import { valueText } from './value-text.ts'

interface Line {
  place: Place
  change: PlanChange
}

/** Differences of two plans, by the part that they belong to; each line says the field, what it was and what it is. */
export const ChangeList = ({ before, after, changes, linked }: { before: WrittenPlan; after: WrittenPlan; changes: readonly PlanChange[]; linked?: boolean }) => {
  const words = useWords()
  const parts = new Map<string, Line[]>()
  const isSetBy = ({ path }: PlanChange): boolean => path[0] === 'checks' && path[2] === 'setBy'
  // Who set an aim is one thing to say, however many fields it is made of.
  // A caution's version follows its words.
  const told = changes.filter((change, index) => !(change.path[0] === 'cautions' && change.path[2] === 'version') && (!isSetBy(change) || !changes.slice(0, index).some((other) => isSetBy(other) && other.path[1] === change.path[1])))
  for (const change of told) {
    // What was taken out has its name in the plan before.
    const place = placeOf(change.kind === 'removed' && change.path.length <= 4 ? before : after, change.path, words)
    const key = `${place.href} ${place.what}`
    parts.set(key, [...(parts.get(key) ?? []), { place, change }])
  }
  return (
    <>
      {[...parts].map(([key, lines]) => {
        const { place, change: first } = lines[0]!
        const title = linked && !isGone(lines) ? <a href={place.href}>{place.what}</a> : place.what
        // Of a whole part that came or went its name says enough.
        if (lines.length === 1 && !place.field && (first.kind === 'added' || first.kind === 'removed')) return <Card key={key} level={3} title={title} beside={words.plan.review[first.kind]} />
        return (
          <Card key={key} level={3} title={title}>
            <ul class="changes">
              {lines.map(({ place: at, change }) => (
                <li key={change.path.join('/')} class="change">
                  {at.field ? <span class="small quiet">{at.field}</span> : null}
                  <span><Said change={change} place={at} before={before} after={after} /></span>
                </li>
              ))}
            </ul>
          </Card>
        )
      })}
    </>
  )
}

const isGone = (lines: readonly Line[]): boolean => lines.some(({ place, change }) => change.kind === 'removed' && !place.field)

const Said = ({ change, place, before, after }: { change: PlanChange; place: Place; before: WrittenPlan; after: WrittenPlan }) => {
  const all = useWords()
  const words = all.plan.review
  const { date } = useDates()
  if (change.kind === 'order') return <ins>{words.order}</ins>
  if (!place.field && change.kind !== 'changed') return <ins>{change.kind === 'added' ? words.added : words.removed}</ins>
  const text = (plan: WrittenPlan, value: unknown): string => {
    const check = change.path[0] === 'checks' && change.path[2] === 'setBy' ? plan.checks.find(({ id }) => id === change.path[1]) : undefined
    return check ? setByText(plan, check, all, date) : valueText(plan, place.described, value, place.checkUnit, all)
  }
  return (
    <>
      <del>{words.from(text(before, change.before))}</del> → <ins>{text(after, change.after)}</ins>
    </>
  )
}
