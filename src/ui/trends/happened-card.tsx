import type { LabPlan } from '../../plan/lab-plan.ts'
import type { SeriesEvent } from '../../projections/series.ts'
import { useWords } from '../app-context.ts'
import { numberText } from '../format.ts'
import { materialName } from '../material-name.ts'
import { Card, Row, Rows } from '../parts/card.tsx'

const shown = 8

/** The event marks of the chart in words, newest first. */
export const HappenedCard = ({ events, plan, when }: { events: readonly SeriesEvent[]; plan: LabPlan; when(time: number): string }) => {
  const all = useWords()
  const words = all.trends.events
  if (events.length === 0) return null
  const sentence = (event: SeriesEvent): string => {
    switch (event.kind) {
      case 'add':
        return words.add(materialName(plan, event.material, all), event.text)
      case 'runOff':
        return words.runOff(numberText(event.litres, 1))
      case 'stripBatch':
        return words.stripBatch(event.batch)
      case 'shift':
        return words.shift(event.name)
      default:
        return words[event.kind]
    }
  }
  return (
    <Card title={words.title}>
      <Rows>{events.slice(-shown).toReversed().map((event) => <Row key={`${event.kind} ${event.time}`} what={sentence(event)} under={when(event.time)} />)}</Rows>
    </Card>
  )
}
