import { useMemo, useState } from 'preact/hooks'
import type { ReadingCheck } from '../../plan/check.ts'
import { checksOfMachine, placeOf } from '../../plan/find.ts'
import type { LabPlan } from '../../plan/lab-plan.ts'
import { chartIndividuals } from '../../science/chart/individuals.ts'
import { chartRules } from '../../science/chart/rules.ts'
import { resultOf } from '../../science/evaluate.ts'
import { useApp, useWords } from '../app-context.ts'
import { dateText, decimalsOf, numberText, timeText } from '../format.ts'
import { saveFile } from '../menu/save-file.ts'
import { Empty } from '../parts/banner.tsx'
import { Button } from '../parts/button.tsx'
import { Card, Row, Rows } from '../parts/card.tsx'
import { Backward, Forward } from '../parts/icons.tsx'
import { VerdictMark } from '../parts/verdict-mark.tsx'
import { Screen } from '../screen.tsx'
import { ControlChart } from './control-chart.tsx'
import { addTimes, csvOf, pointsOf } from './series.ts'

/** A control chart for every check that is a number; one of them at `/trends/<check>`. */
export const Trends = () => {
  const { router, plan } = useApp()
  const words = useWords()
  const [id] = router.here.value.rest
  const inForce = plan.value?.plan
  if (!inForce) return <Screen title={words.trends.title}><Empty title={words.now.noPlan.title}>{words.now.noPlan.more}</Empty></Screen>
  if (!id) return <TrendList plan={inForce} />
  const check = inForce.checks.find((it): it is ReadingCheck => it.id === id && it.kind === 'reading')
  return check ? <Trend plan={inForce} check={check} /> : <Screen title={words.trends.noCheck.title} back><p>{words.trends.noCheck.more}</p></Screen>
}

const TrendList = ({ plan }: { plan: LabPlan }) => {
  const { lab } = useApp()
  const words = useWords().trends
  const { checks } = lab.value.state
  const read = (check: ReadingCheck): boolean => (checks[check.id]?.recent.length ?? 0) > 0
  const machines = plan.machines
    .map((machine) => ({ machine, read: checksOfMachine(plan, machine).filter((it): it is ReadingCheck => it.kind === 'reading' && read(it)) }))
    .filter((it) => it.read.length > 0)
  return (
    <Screen title={words.title}>
      {machines.length === 0 ? <Empty title={words.empty.title}>{words.empty.more}</Empty> : null}
      {machines.map(({ machine, read: list }) => (
        <Card key={machine.id} title={machine.name}>
          <Rows>
            {list.map((check) => {
              const last = checks[check.id]!.recent.at(-1)!
              return (
                <Row
                  key={check.id}
                  what={`${placeOf(plan, check.station).station.name} · ${check.name}`}
                  under={`${last.keyed ?? ''} ${check.unit} · ${timeText(last.time, plan.timeZone)}`}
                  value={<VerdictMark verdict={last.verdict} />}
                  href={`/trends/${check.id}`}
                />
              )
            })}
          </Rows>
        </Card>
      ))}
    </Screen>
  )
}

/** As many as a phone's width can show apart. */
const shown = 120
const fewest = 8

const Trend = ({ plan, check }: { plan: LabPlan; check: ReadingCheck }) => {
  const { lab } = useApp()
  const words = useWords().trends
  const { ledger } = lab.value
  const all = useMemo(() => pointsOf(ledger, check.id), [lab.value, check])
  const points = all.slice(-shown)
  const [index, setIndex] = useState<number>()
  const { station, machine } = placeOf(plan, check.station)
  const title = `${station.name} · ${check.name}`
  if (points.length === 0) return <Screen title={title} back meta={machine.name}><Empty title={words.empty.title}>{words.empty.more}</Empty></Screen>

  const decimals = decimalsOf(check.step)
  const text = (value: number): string => numberText(value, decimals)
  const when = (time: number): string => `${dateText(time, plan.timeZone, 'en')} ${timeText(time, plan.timeZone)}`
  const chosen = Math.min(index ?? points.length - 1, points.length - 1)
  const point = points[chosen]!
  const values = points.map(({ value }) => value)
  return (
    <Screen title={title} back meta={`${machine.name} · ${words.readings(all.length)}`}>
      <Card>
        <ControlChart
          points={points}
          limits={check.limits}
          adds={addTimes(ledger, check.station)}
          chosen={chosen}
          onChoose={setIndex}
          name={words.chart(check.name, points.length, text(Math.min(...values)), text(Math.max(...values)), points.at(-1)!.keyed)}
          text={text}
          time={when}
        />
        <div class="chart-readout">
          <button type="button" class="icon-button" aria-label={words.earlier} onClick={() => setIndex(Math.max(0, chosen - 1))}><Backward /></button>
          <div aria-live="polite">
            <strong>{point.keyed} <span class="quiet small">{check.unit}</span></strong>
            <span class="small quiet">{when(point.time)} </span>
            <VerdictMark verdict={point.verdict} />
          </div>
          <button type="button" class="icon-button" aria-label={words.later} onClick={() => setIndex(Math.min(points.length - 1, chosen + 1))}><Forward /></button>
        </div>
      </Card>
      <Patterns values={values} text={text} onChoose={setIndex} />
      <Card title={words.table}>
        <table class="data-table">
          <thead><tr><th scope="col">{words.time}</th><th scope="col">{words.value}</th><th scope="col">{words.verdict}</th></tr></thead>
          <tbody>
            {points.toReversed().map((it) => (
              <tr key={it.id}><td>{when(it.time)}</td><td class="number">{it.keyed} {check.unit}</td><td>{it.verdict}</td></tr>
            ))}
          </tbody>
        </table>
        <Button onPress={() => saveFile(`${check.id}.csv`, csvOf(all, check.unit), 'text/csv')}>{words.saveFile}</Button>
      </Card>
    </Screen>
  )
}

/** What the readings themselves say: their own limits, and the run rules that they break. */
const Patterns = ({ values, text, onChoose }: { values: readonly number[]; text(value: number): string; onChoose(index: number): void }) => {
  const words = useWords().trends
  if (values.length < fewest) return <Card title={words.flags}><p class="quiet">{words.tooFew}</p></Card>
  const chart = resultOf(chartIndividuals, { values })
  const flags = chart.sigma > 0 ? resultOf(chartRules, { values, centre: chart.centre, sigma: chart.sigma }).flags : []
  return (
    <Card title={words.flags}>
      {flags.length === 0 ? <p>{words.noFlags}</p> : null}
      <Rows>
        {flags.slice(-5).map(({ index, rule }) => (
          <Row key={`${index} ${rule}`} what={words.rules[rule - 1]} under={words.point(index + 1, values.length)} onPress={() => onChoose(index)} />
        ))}
        <Row what={words.centre} value={text(chart.centre)} />
        <Row what={words.computedLimits} value={`${text(chart.lower)} – ${text(chart.upper)}`} />
      </Rows>
    </Card>
  )
}
