import { useState } from 'preact/hooks'
import type { SeriesPoint } from '../../projections/series.ts'
import { useWords } from '../app-context.ts'
import { Button } from '../parts/button.tsx'
import { Card, Row, Rows } from '../parts/card.tsx'
import type { Analysis } from './pictures.ts'

const shownAtFirst = 5

/** Every rule that is broken, newest first, with its words; a tap goes to the reading. */
export const PatternsCard = ({ points, analysis, when, onChoose }: { points: readonly SeriesPoint[]; analysis: Analysis | undefined; when(time: number): string; onChoose(index: number): void }) => {
  const words = useWords().trends
  const [shown, setShown] = useState(shownAtFirst)
  if (!analysis) return <Card title={words.flags}><p class="quiet">{words.limits.tooFew}</p></Card>
  const { charted, offset } = analysis
  const flags = charted.flags.toReversed()
  return (
    <Card title={words.flags} beside={flags.length || undefined}>
      {flags.length === 0 ? <p>{words.noFlags}</p> : null}
      <Rows>
        {flags.slice(0, shown).map(({ index, rule }) => {
          const point = points[index + offset]!
          return <Row key={`${index} ${rule}`} what={words.rule(rule, words.rules[rule - 1]!)} under={`${point.keyed} · ${when(point.time)}`} onPress={() => onChoose(index + offset)} />
        })}
      </Rows>
      {flags.length > shown ? <Button onPress={() => setShown(shown + 20)}>{words.moreFlags(Math.min(20, flags.length - shown))}</Button> : null}
      {flags.length ? <p class="small quiet">{words.falseAlarm}</p> : null}
    </Card>
  )
}
