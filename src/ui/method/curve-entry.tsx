import { useState } from 'preact/hooks'
import { endPointsOf, readCurve, withPoint, type CurveProblem, type EndPointMethod } from '../../rounds/method/curve.ts'
import { useWords } from '../app-context.ts'
import { numberText } from '../format.ts'
import { Button } from '../parts/button.tsx'
import { Field } from '../parts/field.tsx'
import { Sheet } from '../parts/sheet.tsx'
import { Segments } from '../trends/segments.tsx'
import type { KeyedDetermination } from './draft.ts'
import { numberOf } from './parse.ts'
import { TitrationChart } from './titration-chart.tsx'

/** The two ways should agree within this, in mL. Common practice, no source. */
const mostApart = 0.1

interface CurveEntryProps {
  keyed: KeyedDetermination
  sampleMillilitres: number | undefined
  onChange(keyed: KeyedDetermination): void
}

/** Volume and meter, point by point or pasted; the curve grows with each, and the end point moves with it. */
export const CurveEntry = ({ keyed, sampleMillilitres, onChange }: CurveEntryProps) => {
  const words = useWords()
  const say = words.method.curve
  const [volume, setVolume] = useState('')
  const [meter, setMeter] = useState('')
  const [isPasting, setPasting] = useState(false)
  const ends = endPointsOf(keyed.points, sampleMillilitres)
  const { secondDerivative, gran } = ends
  const [millilitres, reading] = [numberOf(volume), numberOf(meter)]
  const canAdd = millilitres !== undefined && reading !== undefined && millilitres >= 0
  const endText = (method: EndPointMethod): string => {
    const end = ends[method]
    return end.ok ? `${numberText(end.millilitres, 2)} mL` : say.none
  }
  const chosen = ends[keyed.endPoint]
  return (
    <>
      {keyed.points.length > 1 ? (
        <TitrationChart
          points={keyed.points}
          secondDerivative={secondDerivative.ok ? secondDerivative.millilitres : undefined}
          gran={gran.ok ? gran.millilitres : undefined}
          name={say.name(keyed.points.length, chosen.ok ? numberText(chosen.millilitres, 2) : '')}
        />
      ) : null}
      {keyed.points.length > 3 ? (
        <>
          <Segments
            name={say.choice}
            of={(['secondDerivative', 'gran'] as const).map((method) => ({ value: method, says: `${say[method]} ${endText(method)}` }))}
            value={keyed.endPoint}
            onChange={(endPoint) => onChange({ ...keyed, endPoint })}
          />
          {chosen.ok ? null : <p class="small quiet">{words.bench.refusal(chosen.refusal)}</p>}
          {secondDerivative.ok && gran.ok && Math.abs(secondDerivative.millilitres - gran.millilitres) > mostApart ? (
            <p class="flagged">{say.differ(numberText(Math.abs(secondDerivative.millilitres - gran.millilitres), 2))}</p>
          ) : null}
        </>
      ) : null}
      <form
        class="point-entry"
        onSubmit={(event) => {
          event.preventDefault()
          if (!canAdd) return
          onChange({ ...keyed, points: withPoint(keyed.points, { millilitres, reading }) })
          setVolume('')
          setMeter('')
          event.currentTarget.querySelector('input')?.focus()
        }}
      >
        <Field name={say.millilitres} unit="mL" kind="decimal" value={volume} onChange={setVolume} />
        <Field name={say.reading} unit={say.readingUnit} kind="decimal" value={meter} onChange={setMeter} />
        <button type="submit" class="button" aria-disabled={canAdd ? undefined : 'true'}>{say.add}</button>
      </form>
      {keyed.points.length ? (
        <details>
          <summary>{say.points(keyed.points.length)}</summary>
          <ul class="rows">
            {keyed.points.map((point) => (
              <li key={point.millilitres} class="row">
                <span class="what">{point.millilitres} mL</span>
                <span class="value">{String(point.reading).replace('-', '−')}</span>
                <button type="button" class="icon-button" aria-label={say.remove(String(point.millilitres))} onClick={() => onChange({ ...keyed, points: keyed.points.filter((it) => it !== point) })}>×</button>
              </li>
            ))}
          </ul>
        </details>
      ) : null}
      <Button onPress={() => setPasting(true)}>{say.paste}</Button>
      {isPasting ? <PasteSheet onClose={() => setPasting(false)} onTake={(points) => { onChange({ ...keyed, points }); setPasting(false) }} /> : null}
    </>
  )
}

const PasteSheet = ({ onClose, onTake }: { onClose(): void; onTake(points: KeyedDetermination['points']): void }) => {
  const words = useWords()
  const say = words.method.curve
  const [text, setText] = useState('')
  const read = readCurve(text)
  const problem = text.trim() === '' ? undefined : !read.ok ? say.problems[read.problem.code](read.problem as CurveProblem as never) : read.points.length === 0 ? say.problems.empty() : undefined
  return (
    <Sheet title={say.pasteTitle} closeName={words.shell.back} onClose={onClose}>
      <Field name={say.pasteLabel} kind="long" value={text} onChange={setText} problem={problem} />
      <Button kind="go" notYet={read.ok && read.points.length ? undefined : say.problems.empty()} onPress={() => (read.ok ? onTake(read.points) : undefined)}>{say.take}{read.ok && read.points.length ? ` (${say.points(read.points.length)})` : ''}</Button>
    </Sheet>
  )
}
