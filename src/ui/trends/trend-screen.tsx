import { useEffect, useMemo, useState } from 'preact/hooks'
import * as z from 'zod/mini'
import type { ReadingCheck, StripCheck } from '../../plan/check.ts'
import { placeOf } from '../../plan/find.ts'
import { fullName } from '../../plan/full-name.ts'
import type { LabPlan } from '../../plan/lab-plan.ts'
import { limitsAbout } from '../../plan/limits.ts'
import { controlChart, fewestForLimits, mostAnalysed, staysLevel } from '../../projections/control-chart.ts'
import { forecastOf } from '../../projections/forecast.ts'
import type { Lab } from '../../projections/lab.ts'
import { eventsOf, figureSeriesOf, gapsOf, seriesOf, shiftBorders } from '../../projections/series.ts'
import { useApp, useWords } from '../app-context.ts'
import { decimalsOf, numberText } from '../format.ts'
import { Empty } from '../parts/banner.tsx'
import { Button } from '../parts/button.tsx'
import { Card, Row, Rows } from '../parts/card.tsx'
import { Screen } from '../screen.tsx'
import { useDates } from '../use-dates.ts'
import { ControlChart } from './control-chart.tsx'
import { EventKey } from './event-marks.tsx'
import { ForecastCard } from './forecast-card.tsx'
import { HappenedCard } from './happened-card.tsx'
import { LimitsCard } from './limits-card.tsx'
import { PatternsCard } from './patterns-card.tsx'
import { chartPicture, pictureNames, signalsAt, type Analysis, type PictureName } from './pictures.ts'
import { Readout, Signals } from './readout.tsx'
import { SaveCard } from './save-card.tsx'
import { Segments } from './segments.tsx'
import { TableCard } from './table-card.tsx'
import { indexAt } from './thin.ts'
import { showing, type Window } from './window.ts'
import { ZoomBar } from './zoom-bar.tsx'
import './trends.css'

/** Readings that are seen at first: as many as a phone's width shows apart. */
const shownAtFirst = 60
/** Of the time that is seen, the most that is left free for what is still to come. */
const aheadShare = 0.35

const keptChoice = z.object({ by: z.enum(['plan', 'computed']), baseline: z.optional(z.string()) })
type Choice = z.infer<typeof keptChoice>

export const TrendScreen = ({ plan, check, figure }: { plan: LabPlan; check: ReadingCheck | StripCheck; figure: string | undefined }) => {
  const { lab, archive, language } = useApp()
  const words = useWords()
  const say = words.trends
  /** The whole record, once it was asked for; in memory are only its last days. */
  const [whole, setWhole] = useState<Lab | 'failed'>()
  const { ledger } = whole && whole !== 'failed' ? whole : lab.value
  const figurePlan = check.kind === 'strip' ? check.figures.find((it) => it.figure === figure) : undefined
  const { station, machine } = placeOf(plan, check.station)
  const step = check.kind === 'reading' ? check.step : figurePlan!.step
  const unit = check.kind === 'reading' ? (check.unit === '1' ? '' : check.unit) : figurePlan!.unit === '1' ? '' : figurePlan!.unit
  const limits = useMemo(() => (check.kind === 'reading' ? check.limits : limitsAbout(figurePlan!.limits, 0)), [check, figure])
  const name = figure ? `${check.name} · ${words.marks.figure(figure)}` : check.name

  const points = useMemo(() => (check.kind === 'reading' ? seriesOf(ledger, check.id) : figureSeriesOf(ledger, check, figure!)), [ledger, lab.value, check, figure])
  const events = useMemo(() => eventsOf(ledger, plan, { station: check.station, check: check.id }), [ledger, lab.value, plan, check])
  const [choice, keepChoice] = useChoice(`trend:${check.id}${figure ? `:${figure}` : ''}`)
  const offset = Math.max(0, points.length - mostAnalysed)
  const isLevel = staysLevel(check)
  const analysis = useMemo((): Analysis | undefined => {
    if (!isLevel) return undefined
    const newest = points.slice(offset)
    const from = newest.findIndex(({ id }) => id === choice.baseline)
    const charted = controlChart({
      values: newest.map(({ value }) => value), gapsBefore: gapsOf(newest, check), limits: choice.by === 'plan' ? { by: 'plan', plan: limits } : { by: 'computed' },
      ...(from > 0 ? { baselineFrom: from } : {}),
    })
    return charted && { charted, offset }
  }, [points, choice, limits])
  const forecast = useMemo(() => forecastOf(points, events, check, limits), [points, events, check, limits])

  const [pictureName, setPicture] = useState<PictureName>('readings')
  const [windowAsked, setWindow] = useState<Window>()
  const [index, setIndex] = useState<number>()
  const picture = useMemo(() => chartPicture(pictureName, { points, limits, by: choice.by, analysis, forecast }), [pictureName, points, limits, choice.by, analysis, forecast])

  const meta = machine.name
  const title = fullName(plan, { station: check.station, name })
  const last = points.at(-1)
  if (!last) return <Screen title={title} back meta={meta}><Empty title={say.empty.title}>{say.empty.more}</Empty></Screen>

  const first = points[0]!
  const firstShown = points[Math.max(0, points.length - shownAtFirst)]!
  const room = (from: number): number => {
    const span = Math.max(3_600_000, last.time - from)
    return forecast ? Math.min(Math.max(forecast.latest - last.time, 0) * 1.1, (span * aheadShare) / (1 - aheadShare)) : span * 0.03
  }
  const extent: Window = { from: first.time - Math.max(60_000, (last.time - first.time) * 0.01), to: last.time + Math.max(60_000, room(first.time)) }
  const window = windowAsked ?? { from: firstShown.time - (last.time - firstShown.time) * 0.03 - 60_000, to: last.time + Math.max(60_000, room(firstShown.time)) }
  const chosen = Math.min(index ?? points.length - 1, points.length - 1)
  const choose = (next: number): void => {
    setIndex(next)
    setWindow(showing(window, extent, points[next]!.time))
  }
  const decimals = decimalsOf(step)
  const text = (value: number): string => numberText(value, pictureName === 'readings' ? decimals : decimals + 1)
  const { when } = useDates(plan.timeZone)
  const seenFrom = indexAt(picture.times, window.from)
  const seenTo = indexAt(picture.times, window.to + 1)
  const seen = points.slice(seenFrom, seenTo)
  const values = seen.map(({ value }) => value)
  const chartEvents = [...events, ...shiftBorders(plan, window)]
  const pictureValue = picture.lines[0]!.values[chosen]
  const hasSums = analysis !== undefined
  return (
    <Screen title={title} back meta={`${meta} · ${check.kind === 'strip' ? say.figures(points.length) : say.readings(points.length)}`}>
      <Card>
        <Readout
          point={points[chosen]!}
          unit={check.kind === 'strip' ? say.offAim(unit) : unit}
          more={[
            when(points[chosen]!.time),
            points[chosen]!.found === undefined ? undefined : say.found(numberText(points[chosen]!.found, decimals)),
            pictureName === 'readings' || pictureValue === undefined || Number.isNaN(pictureValue) ? undefined : `${say.pictures[pictureName]} ${text(pictureValue)}`,
          ]}
          onEarlier={chosen > 0 ? () => choose(chosen - 1) : undefined}
          onLater={chosen < points.length - 1 ? () => choose(chosen + 1) : undefined}
        />
        <ControlChart
          picture={picture}
          events={chartEvents}
          extent={extent}
          window={window}
          chosen={chosen}
          onWindow={setWindow}
          onChoose={setIndex}
          name={say.chart(name, say.pictures[pictureName], seen.length, lowest(values, text), highest(values, text), last.keyed)}
          timeZone={plan.timeZone}
          language={language.value}
          text={text}
        />
        <input
          type="range"
          class="scrub"
          aria-label={say.scrub}
          aria-valuetext={`${points[chosen]!.keyed} ${unit}, ${when(points[chosen]!.time)}, ${points[chosen]!.verdict}`}
          min={seenFrom}
          max={Math.max(seenFrom, seenTo - 1)}
          value={chosen}
          onInput={(event) => setIndex(Number(event.currentTarget.value))}
        />
        <ZoomBar window={window} extent={extent} onWindow={setWindow} />
        {isLevel ? null : <p class="small quiet">{say.notLevel}</p>}
        {hasSums ? <Segments name={say.pictureChoice} of={pictureNames.map((it) => ({ value: it, says: say.pictures[it] }))} value={pictureName} onChange={(it) => setPicture(it)} /> : null}
        {hasSums ? <p class="small quiet">{say.pictureMore[pictureName]}</p> : null}
        <Signals signals={signalsAt(analysis, chosen)} />
        <EventKey events={chartEvents.filter(({ time }) => time >= window.from && time <= window.to)} names={say.events.kinds} />
      </Card>
      <ForecastCard forecast={forecast} text={(value) => `${numberText(value, decimals)} ${unit}`} />
      {isLevel ? <PatternsCard points={points} analysis={analysis} when={when} onChoose={choose} /> : null}
      <LimitsCard
        isLevel={isLevel}
        limits={limits} unit={unit} decimals={decimals} analysis={analysis} choice={choice.by} analysed={Math.min(points.length, mostAnalysed)} total={points.length}
        baselineFrom={analysis ? when(points[analysis.offset + analysis.charted.baseline.from]!.time) : ''}
        onChoice={(by) => keepChoice({ ...choice, by })}
        onBaseline={isLevel && points.length - chosen >= fewestForLimits ? () => keepChoice({ by: 'computed', baseline: points[chosen]!.id }) : undefined}
      />
      {lab.value.log.linesBefore > 0 && !(whole && whole !== 'failed') ? (
        <Card title={say.whole.title}>
          <p class="quiet">{whole === 'failed' ? say.whole.failed : say.whole.more}</p>
          <Button onPress={() => archive().then((it) => it.whole()).then(setWhole, () => setWhole('failed'))}>{say.whole.fetch}</Button>
        </Card>
      ) : null}
      <HappenedCard events={events} plan={plan} when={when} />
      <TableCard points={points} unit={check.kind === 'strip' ? '' : unit} analysis={analysis} when={when} />
      <Card>
        <Rows>
          <Row what={say.toCheck} href={`/check/${check.id}`} />
          {check.kind === 'reading' && check.method ? <Row what={words.method.fromCheck} href={`/method/${check.id}`} /> : null}
          {check.kind === 'strip' ? <Row what={say.toStrips} href={`/strip/${check.id}`} /> : null}
          {station.kind === 'silverCell' ? <Row what={words.silver.title} href="/silver" /> : null}
          {station.kind === 'replenisher' ? <Row what={words.replenish.title} href="/replenish" /> : null}
        </Rows>
      </Card>
      <SaveCard id={figure ? `${check.id}-${figure}` : check.id} points={points} unit={unit} caption={`${plan.name} · ${machine.name} · ${title}${unit ? `, ${unit}` : ''} · ${when(window.from)} – ${when(window.to)}`} />
    </Screen>
  )
}

/** Which limits, and the reading from which the baseline runs: kept on this phone for each chart. */
const useChoice = (key: string): [Choice, (next: Choice) => void] => {
  const { phone } = useApp()
  const [kept, setKept] = useState<Choice>({ by: 'plan' })
  useEffect(() => {
    void phone.drafts.get(key).then((found) => {
      const parsed = keptChoice.safeParse(found)
      if (parsed.success) setKept(parsed.data)
    })
  }, [key])
  return [
    kept,
    (next) => {
      setKept(next)
      void phone.drafts.put(key, next)
    },
  ]
}

const lowest = (values: readonly number[], text: (value: number) => string): string => (values.length ? text(values.reduce((a, b) => Math.min(a, b))) : '')
const highest = (values: readonly number[], text: (value: number) => string): string => (values.length ? text(values.reduce((a, b) => Math.max(a, b))) : '')
