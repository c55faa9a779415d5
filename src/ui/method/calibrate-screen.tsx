import { useState } from 'preact/hooks'
import type { LookCheck, ReadingCheck } from '../../plan/check.ts'
import { placeOf } from '../../plan/find.ts'
import type { LabPlan, Method } from '../../plan/lab-plan.ts'
import { judge } from '../../plan/limits.ts'
import { evaluate } from '../../science/evaluate.ts'
import { bufferKeys } from '../../science/phMeter/buffer-table.ts'
import { phMeterCalibrate } from '../../science/phMeter/calibrate.ts'
import { Refusal } from '../../science/refusal.ts'
import { writtenValue } from '../../rounds/method/work-out.ts'
import { useApp, useWords } from '../app-context.ts'
import { buzz } from '../buzz.ts'
import { numberText } from '../format.ts'
import { Banner } from '../parts/banner.tsx'
import { Button } from '../parts/button.tsx'
import { Card, Row, Rows } from '../parts/card.tsx'
import { Field } from '../parts/field.tsx'
import { Working } from '../parts/working.tsx'
import { SavingProblem } from '../saving-problem.tsx'
import { useSaving } from '../saving.ts'
import { Screen } from '../screen.tsx'
import { numberOf } from './parse.ts'

interface Keyed {
  buffer: string
  pH: string
  celsius: string
  millivolts: string
}

const own = 'own'
const blank = (buffer: string): Keyed => ({ buffer, pH: '', celsius: '', millivolts: '' })

/**
 * Two buffers or three: slope, offset, and whether the electrode may be used. Slope and offset become readings, so that their trend is a chart like any
 * other; the check that proves the meter is answered by the same calibration.
 */
export const CalibrateScreen = ({ plan, method }: { plan: LabPlan; method: Method }) => {
  const { plan: inForce, router } = useApp()
  const words = useWords()
  const say = words.method.calibrate
  const saving = useSaving()
  const [rows, setRows] = useState<Keyed[]>(() => [blank('phosphate'), blank('borax')])
  const checks = plan.checks.filter((it): it is ReadingCheck => it.kind === 'reading' && it.method === method.id)
  const proof = plan.checks.find((it): it is LookCheck => it.kind === 'look' && it.calibrates !== undefined && checks.some(({ instrument }) => instrument.name === it.calibrates))
  const { machine, station } = placeOf(plan, checks[0]!.station)
  const points = rows.flatMap(({ buffer, pH, celsius, millivolts }) => {
    const [value, degrees, volts] = [numberOf(pH), numberOf(celsius), numberOf(millivolts)]
    if (degrees === undefined || volts === undefined || (buffer === own && value === undefined)) return []
    return [buffer === own ? { pH: value!, celsius: degrees, millivolts: volts } : { buffer: buffer as (typeof bufferKeys)[number], celsius: degrees, millivolts: volts }]
  })
  const outcome = points.length === rows.length ? calibrated(points) : undefined
  const change = (at: number, next: Partial<Keyed>): void => setRows(rows.with(at, { ...rows[at]!, ...next }))
  const save = async (): Promise<void> => {
    if (!outcome || 'refusal' in outcome) return
    const { result } = outcome
    for (const check of checks) {
      const value = (result as Record<string, unknown>)[check.of ?? '']
      if (typeof value !== 'number') continue
      const written = writtenValue(value, check)
      const saved = await saving.save('reading', {
        check: check.id, plan: inForce.value!.id, ...written, unit: check.unit, how: 'worked', verdict: judge(check.limits, written.value).verdict,
        working: { calculation: phMeterCalibrate.id, inputs: { points }, result: { ...result } },
      })
      if (!saved) return
    }
    if (proof && !(await saving.save('look', { check: proof.id, plan: inForce.value!.id, right: result.acceptable, remark: say.advice[result.advice] }))) return
    buzz(result.acceptable ? 'saved' : 'act')
    router.go(checks[0] ? `/trends/${checks[0].id}` : '/method', 'replace')
  }
  return (
    <Screen
      title={method.name}
      back
      meta={`${machine.name} · ${station.name}`}
      next={<Button kind={outcome && 'result' in outcome && !outcome.result.acceptable ? 'stop' : 'go'} wide notYet={!outcome || 'refusal' in outcome || saving.busy ? words.method.notYet : undefined} onPress={() => void save()}>{outcome && 'result' in outcome && !outcome.result.acceptable ? say.saveRefused : say.save}</Button>}
    >
      {method.steps.map((step) => <p key={step.says}>{step.says}</p>)}
      <SavingProblem of={saving} />
      <div role="status" class="stack">
        {outcome && 'refusal' in outcome ? <Banner kind="stop" title={words.bench.refusal(outcome.refusal)} /> : null}
        {outcome && 'result' in outcome ? (
          <Card>
            {outcome.result.acceptable ? <p><strong>{say.advice[outcome.result.advice]}</strong></p> : <Banner kind="stop" title={say.refused}>{say.advice[outcome.result.advice]}</Banner>}
            <dl class="pairs">
              <dt>{say.slope}</dt><dd>{numberText(outcome.result.slopePercent, 1)} %</dd>
              <dt>{say.offset}</dt><dd>{numberText(outcome.result.offsetMillivolts, 1)} mV</dd>
              {rows.length > 2 ? <><dt>{say.residual}</dt><dd>{numberText(outcome.result.residualPh, 2)} pH</dd></> : null}
            </dl>
            <details><summary>{words.method.working}</summary><Working steps={outcome.steps} name={words.method.working} /></details>
          </Card>
        ) : null}
      </div>
      {rows.map((row, at) => (
        <Card key={at} title={say.buffer(at + 1)}>
          <div class="field">
            <label for={`buffer-${at}`}>{say.which}</label>
            <div class="control">
              <select id={`buffer-${at}`} value={row.buffer} onChange={(event) => change(at, { buffer: event.currentTarget.value })}>
                {[...bufferKeys, own].map((key) => <option key={key} value={key}>{key === own ? say.own : (say.buffers[key] ?? key)}</option>)}
              </select>
            </div>
          </div>
          {row.buffer === own ? <Field name={say.printed} kind="decimal" value={row.pH} onChange={(pH) => change(at, { pH })} /> : null}
          <div class="two">
            <Field name={say.celsius} unit="°C" kind="decimal" value={row.celsius} onChange={(celsius) => change(at, { celsius })} />
            <Field name={say.millivolts} unit="mV" kind="decimal" value={row.millivolts} onChange={(millivolts) => change(at, { millivolts })} />
          </div>
        </Card>
      ))}
      <Button onPress={() => setRows(rows.length > 2 ? rows.slice(0, 2) : [...rows, blank('phthalate')])}>{rows.length > 2 ? say.withoutThird : say.third}</Button>
      <Card title={say.trends}>
        <Rows>{checks.map((check) => <Row key={check.id} what={check.name} href={`/trends/${check.id}`} />)}</Rows>
      </Card>
    </Screen>
  )
}

const calibrated = (points: Parameters<typeof phMeterCalibrate.run>[0]['points']): ReturnType<typeof evaluate<typeof phMeterCalibrate.inputs, typeof phMeterCalibrate.outputs>> | { refusal: Refusal } => {
  try {
    return evaluate(phMeterCalibrate, { points })
  } catch (thrown) {
    if (!(thrown instanceof Refusal)) throw thrown
    return { refusal: thrown }
  }
}
