import type { StripCheck } from '../../plan/check.ts'
import { placeOf } from '../../plan/find.ts'
import { figureLimits, judgeStrip } from '../../plan/judge-strip.ts'
import type { LineOf } from '../../projections/line.ts'
import type { StripMark } from '../../projections/strips.ts'
import { writeCgats } from '../../rounds/densities/cgats-write.ts'
import { stripFigures } from '../../rounds/strip/figures.ts'
import { plainDensities } from '../../rounds/strip/strip-data.ts'
import { tidy } from '../../science/decimal.ts'
import { useApp, useWords } from '../app-context.ts'
import { decimalsOf, numberText } from '../format.ts'
import { saveFile } from '../menu/save-file.ts'
import { Button } from '../parts/button.tsx'
import { Card } from '../parts/card.tsx'
import { VerdictMark } from '../parts/verdict-mark.tsx'
import { CausesCard } from './causes-card.tsx'
import { CurveChart, CurveKey } from './curve-chart.tsx'
import { densityDecimals, hasExposures, pointsOfStrip } from './points.ts'
import { TimesOfStrip } from './strip-times-sheet.tsx'
import './strip.css'
import '../trends/trends.css'

export const drawnOver = 5

/** One strip: its curve over the aims of its batch and the strips before it, its figures, every step, its three times. */
export const StripView = ({ check, line }: { check: StripCheck; line: LineOf<'strip'> }) => {
  const { lab, plan } = useApp()
  const words = useWords()
  const say = words.strip
  const { data } = line
  const densities = plainDensities(data.densities)
  const { curve, refusal } = stripFigures(check, densities)
  const strips = lab.value.state.strips[check.id]
  const batch = strips?.batches.findLast((it) => it.batch === data.batch)
  const past = (strips?.recent ?? []).filter((it): it is StripMark => it.id !== line.id && it.time < line.time).slice(-drawnOver)
  const decimals = densityDecimals(check)
  const { machine } = placeOf(plan.value!.plan, check.station)
  const signed = (value: number, places: number): string => (Number(value.toFixed(places)) > 0 ? `+${numberText(value, places)}` : numberText(value, places))
  const gamma = data.figures['gamma']
  return (
    <>
      {hasExposures(check) && Object.keys(densities).length > 1 ? (
        <Card>
          <CurveChart
            strip={pointsOfStrip(check, densities)}
            reference={batch ? pointsOfStrip(check, batch.aims) : undefined}
            past={past.map((it) => pointsOfStrip(check, it.densities))}
            straight={curve ? { gamma: curve.gamma, intercept: curve.gammaIntercept, from: curve.gammaRange[0]!, to: curve.gammaRange[1]! } : undefined}
            speedPoint={curve && curve.speedLogExposure !== null ? [curve.speedLogExposure, curve.baseFog + 0.1] : undefined}
            name={say.curve(gamma === undefined ? say.none : numberText(gamma, 2))}
          />
          <CurveKey strip={say.key.strip} reference={batch && say.key.reference(batch.batch)} past={past.length ? say.key.past(past.length) : undefined} />
          {refusal ? <p class="problem">{refusal.step ? say.refused.step(refusal.step) : say.refused.curve}</p> : null}
        </Card>
      ) : null}
      <Card title={say.figures}>
        <FigureTable check={check} figures={data.figures} aims={data.aims} />
        {gamma === undefined ? null : <p class="small quiet">{definitionOf(check, words.strip)}</p>}
        {curve?.flags.map((flag) => <p key={flag} class="small">{say.flags[flag]}</p>)}
        {batch || !check.steps ? null : <p class="small quiet">{say.noBatch}</p>}
      </Card>
      {data.verdict === 'IN' ? null : <CausesCard check={check} line={line} />}
      {data.stripIn ? (
        <Card>
          <TimesOfStrip machine={machine} stripIn={Date.parse(data.stripIn)} read={line.time} />
          {data.batch ? <p class="small quiet">{say.batch(data.batch)}</p> : null}
        </Card>
      ) : null}
      {check.steps ? (
        <Card title={say.perStep}>
          <div class="table-scroll">
            <table class="data-table">
              <thead><tr><th scope="col">{say.stepName}</th><th scope="col">{say.density}</th><th scope="col">{say.aim}</th><th scope="col">{say.deviation}</th></tr></thead>
              <tbody>
                {check.steps.map(({ name }) => {
                  const density = densities[name]
                  const aim = batch?.aims[name]
                  return (
                    <tr key={name}>
                      <th scope="row">{name}</th>
                      <td class="number">{data.densities[name]?.keyed ?? say.none}</td>
                      <td>{aim === undefined ? say.none : numberText(aim, decimals)}</td>
                      <td>{density === undefined || aim === undefined ? say.none : signed(tidy(density - aim), decimals)}</td>
                    </tr>
                  )
                })}
              </tbody>
            </table>
          </div>
          <Button
            onPress={() =>
              saveFile(
                `${check.id}-${new Date(line.time).toISOString().slice(0, 16).replaceAll(/[:T]/g, '-')}.txt`,
                writeCgats(
                  { originator: plan.value!.plan.name, descriptor: `${machine.name}, ${check.name}`, created: new Date(line.time).toISOString(), ...(data.batch ? { batch: data.batch } : {}) },
                  check.steps!.flatMap(({ name }) => (data.densities[name] ? [{ name, keyed: data.densities[name].keyed }] : [])),
                ),
                'text/plain',
              )
            }
          >
            {say.saveCgats}
          </Button>
        </Card>
      ) : null}
    </>
  )
}

const FigureTable = ({ check, figures, aims }: { check: StripCheck; figures: Readonly<Record<string, number>>; aims: Readonly<Record<string, number>> | undefined }) => {
  const words = useWords()
  const say = words.strip
  const judged = judgeStrip(check, figures, aims).figures
  const others = Object.keys(figures).filter((name) => !check.figures.some(({ figure }) => figure === name))
  return (
    <div class="table-scroll">
      <table class="data-table">
        <thead><tr><th scope="col">{say.figure}</th><th scope="col">{say.value}</th><th scope="col">{say.aim}</th><th scope="col">{say.deviation}</th><th scope="col"><span class="unseen">{say.verdict}</span></th></tr></thead>
        <tbody>
          {check.figures.map((each) => {
            const value = figures[each.figure]
            const decimals = decimalsOf(each.step)
            const { aim } = figureLimits(each, aims)
            const off = value === undefined ? undefined : tidy(value - aim)
            return (
              <tr key={each.figure}>
                <th scope="row">{words.marks.figure(each.figure)}</th>
                <td class="number">{value === undefined ? say.none : numberText(value, decimals)}</td>
                <td>{numberText(aim, decimals)}</td>
                <td>{off === undefined ? say.none : `${off > 0 ? '+' : ''}${numberText(off, decimals)}`}</td>
                <td class="mark">{judged[each.figure] ? <VerdictMark verdict={judged[each.figure]!.verdict} /> : say.none}</td>
              </tr>
            )
          })}
          {others.map((name) => (
            <tr key={name}>
              <th scope="row">{words.marks.figure(name)}</th>
              <td class="number">{numberText(figures[name]!, 2)}</td>
              <td colSpan={3} class="small quiet">{say.unjudged}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  )
}

/** The definition of gamma in words, with the densities that the plan has for it. */
export const definitionOf = ({ gamma }: StripCheck, { gammaBy }: ReturnType<typeof useWords>['strip']): string => {
  const by = gamma?.by ?? 'greatestSlope'
  return by === 'betweenDensities' ? gammaBy.betweenDensities(numberText(gamma?.fromDensity ?? 0, 2), numberText(gamma?.toDensity ?? 0, 2)) : gammaBy[by]
}
