import type { StripCheck } from '../../plan/check.ts'
import { placeOf } from '../../plan/find.ts'
import type { LabPlan } from '../../plan/lab-plan.ts'
import { figureLimits } from '../../plan/judge-strip.ts'
import type { Ledger } from '../../projections/ledger.ts'
import type { LineOf } from '../../projections/line.ts'
import type { ShiftPage, ShiftStrip } from '../../projections/shift-page.ts'
import type { Strips } from '../../projections/strips.ts'
import { plainDensities } from '../../rounds/strip/strip-data.ts'
import type { EntryId } from '../../record/ids.ts'
import { useWords } from '../app-context.ts'
import { decimalsOf, numberText, timeText } from '../format.ts'
import { Card, Row, Rows } from '../parts/card.tsx'
import { Spark } from '../parts/spark.tsx'
import { VerdictMark } from '../parts/verdict-mark.tsx'
import { CurveChart, CurveKey } from '../strip/curve-chart.tsx'
import { hasExposures, pointsOfStrip } from '../strip/points.ts'
import { shortText } from '../units.ts'

interface Given {
  plan: LabPlan
  page: ShiftPage
  ledger: Ledger
  strips: Strips
  onEvidence(id: EntryId): void
}

/** So many strips before a curve, and on a chart. */
const drawnOver = 5
const charted = 12

/** With the decimals of the plan, where it has the figure. */
const figureText = (check: StripCheck, name: string, value: number): string => {
  const step = check.figures.find(({ figure }) => figure === name)?.step
  return step === undefined ? shortText(value, 2) : numberText(value, decimalsOf(step))
}

/** Strips in control or not: each with its entry, the last curve over its aims, and every figure over the strips before it. */
export const StripsCard = ({ plan, page, ledger, strips, onEvidence }: Given) => {
  const words = useWords()
  const say = words.shift.strips
  const out = page.strips.filter(({ data }) => data.verdict !== 'IN').length
  const checks = plan.checks.filter((check): check is StripCheck => check.kind === 'strip' && page.strips.some(({ data }) => data.check === check.id))
  if (page.strips.length === 0) return null
  return (
    <Card title={say.title} beside={say.inControl(page.strips.length - out, page.strips.length)}>
      {checks.map((check) => {
        const own = page.strips.filter(({ data }) => data.check === check.id)
        return (
          <section key={check.id} class="total stack">
            <h3>{placeOf(plan, check.station).machine.name}, {check.name.toLowerCase()}</h3>
            <Rows>
              {own.map(({ id, time, data, exception }) => (
                <Row
                  key={id}
                  what={timeText(time, plan.timeZone)}
                  under={[...Object.entries(data.figures).slice(0, 3).map(([name, value]) => `${words.marks.figure(name)} ${figureText(check, name, value)}`), exception ? say.out : ''].filter(Boolean).join(' · ')}
                  value={<VerdictMark verdict={data.verdict} />}
                  onPress={() => onEvidence(id)}
                />
              ))}
            </Rows>
            <Pictures check={check} own={own} before={stripsBefore(ledger, check, page)} strips={strips} />
          </section>
        )
      })}
    </Card>
  )
}

/** The strips of one check up to the end of the shift, oldest first. */
const stripsBefore = (ledger: Ledger, check: StripCheck, { span, now }: ShiftPage): LineOf<'strip'>[] =>
  ledger.lines.filter((line): line is LineOf<'strip'> => line.kind === 'strip' && !line.withdrawnBy && line.data.check === check.id && line.time < Math.min(span.to, now + 1)).slice(-charted)

const Pictures = ({ check, own, before, strips }: { check: StripCheck; own: readonly ShiftStrip[]; before: readonly LineOf<'strip'>[]; strips: Strips }) => {
  const words = useWords()
  const say = words.strip
  const last = own.at(-1)!
  const densities = plainDensities(last.data.densities)
  const batch = strips[check.id]?.batches.findLast((it) => it.batch === last.data.batch)
  const past = before.filter(({ id }) => id !== last.id).slice(-drawnOver)
  const gamma = last.data.figures['gamma']
  return (
    <>
      {hasExposures(check) && Object.keys(densities).length > 1 ? (
        <>
          <CurveChart
            strip={pointsOfStrip(check, densities)}
            reference={batch ? pointsOfStrip(check, batch.aims) : undefined}
            past={past.map(({ data }) => pointsOfStrip(check, plainDensities(data.densities)))}
            name={say.curve(gamma === undefined ? say.none : numberText(gamma, 2))}
          />
          <CurveKey strip={say.key.strip} reference={batch && say.key.reference(batch.batch)} past={past.length ? say.key.past(past.length) : undefined} />
        </>
      ) : null}
      <ul class="figure-charts">
        {check.figures.map((each) => {
          const values = before.flatMap(({ data }) => data.figures[each.figure] ?? [])
          if (values.length === 0) return null
          const limits = figureLimits(each, last.data.aims)
          const text = (value: number): string => numberText(value, decimalsOf(each.step))
          return (
            <li key={each.figure}>
              <span class="spread small"><span>{words.marks.figure(each.figure)}</span><strong>{text(values.at(-1)!)}</strong></span>
              <Spark values={values} limits={limits} name={words.shift.strips.chart(words.marks.figure(each.figure), values.length, text(values.at(-1)!), text(limits.aim))} />
            </li>
          )
        })}
      </ul>
    </>
  )
}
