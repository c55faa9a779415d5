import { useState } from 'preact/hooks'
import { seriesCsv, type SeriesPoint } from '../../projections/series.ts'
import { useWords } from '../app-context.ts'
import { saveFile } from '../menu/save-file.ts'
import { Button } from '../parts/button.tsx'
import { Card } from '../parts/card.tsx'
import { chartPng, chartSvg } from './chart-file.ts'

/** The readings as a table for other programs, the chart as a picture. */
export const SaveCard = ({ id, points, unit, caption }: { id: string; points: readonly SeriesPoint[]; unit: string; caption: string }) => {
  const words = useWords().trends.save
  const [hasFailed, setFailed] = useState(false)
  const chart = (): SVGSVGElement => document.querySelector<SVGSVGElement>('svg.control-chart[role="img"]')!
  return (
    <Card title={words.title}>
      <div class="save-row">
        <Button onPress={() => saveFile(`${id}.csv`, seriesCsv(points, unit), 'text/csv')}>{words.csv}</Button>
        <Button onPress={() => saveFile(`${id}.svg`, chartSvg(chart(), caption).text, 'image/svg+xml')}>{words.svg}</Button>
        <Button onPress={() => chartPng(chart(), caption).then((blob) => saveFile(`${id}.png`, blob, 'image/png'), () => setFailed(true))}>{words.png}</Button>
      </div>
      {hasFailed ? <p class="problem" role="alert">{words.failed}</p> : null}
    </Card>
  )
}
