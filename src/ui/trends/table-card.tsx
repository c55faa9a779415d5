import { useState } from 'preact/hooks'
import type { SeriesPoint } from '../../projections/series.ts'
import { useWords } from '../app-context.ts'
import { Button } from '../parts/button.tsx'
import { Card } from '../parts/card.tsx'
import { signalsAt, type Analysis } from './pictures.ts'

const page = 20

/** All that the chart shows, for eyes and for a screen reader. */
export const TableCard = ({ points, unit, analysis, when }: { points: readonly SeriesPoint[]; unit: string; analysis: Analysis | undefined; when(time: number): string }) => {
  const words = useWords().trends
  const [count, setCount] = useState(page)
  const rows = Array.from({ length: Math.min(count, points.length) }, (_, back) => points.length - 1 - back)
  return (
    <Card title={words.table}>
      <div class="table-scroll">
        <table class="data-table">
          <thead><tr><th scope="col">{words.time}</th><th scope="col">{words.value}</th><th scope="col">{words.verdict}</th></tr></thead>
          <tbody>
            {rows.map((index) => {
              const point = points[index]!
              const { rules, average, sums, range } = signalsAt(analysis, index)
              const signals = [...rules.map((rule) => words.rule(rule, words.rules[rule - 1]!)), ...(range ? [words.short.range] : []), ...(average ? [words.short.average] : []), ...(sums ? [words.short.sums] : [])]
              return (
                <tr key={point.id}>
                  <td>{when(point.time)}</td>
                  <td class="number">{point.keyed} {unit}</td>
                  <td>{point.verdict}{signals.map((signal) => <span key={signal} class="small quiet" style={{ display: 'block' }}>{signal}</span>)}</td>
                </tr>
              )
            })}
          </tbody>
        </table>
      </div>
      {points.length > count ? <Button onPress={() => setCount(count + 5 * page)}>{words.tableMore(Math.min(5 * page, points.length - count))}</Button> : null}
    </Card>
  )
}
