import { useState } from 'preact/hooks'
import { byTimeOrHeat } from '../../corrections/causes/by-time-or-heat.ts'
import { stripCauses, type Cause } from '../../corrections/causes/strip-causes.ts'
import type { StripCheck } from '../../plan/check.ts'
import type { LineOf } from '../../projections/line.ts'
import { useApp, useWords } from '../app-context.ts'
import { decimalsOf, numberText, timeText } from '../format.ts'
import { materialName } from '../material-name.ts'
import { Card, Row, Rows } from '../parts/card.tsx'
import { checkName } from '../shift/line-text.ts'
import { speedText } from '../units.ts'

const seeable = ['streaks', 'yellowStain', 'brownStain'] as const

/** Suspects for a strip that is off, each with its reasons and one tap to the check that settles it; then what would bring gamma back. */
export const CausesCard = ({ check, line }: { check: StripCheck; line: LineOf<'strip'> }) => {
  const { lab, plan, phone } = useApp()
  const words = useWords()
  const say = words.causes
  const [seen, setSeen] = useState<readonly (typeof seeable)[number][]>([])
  const inForce = plan.value!.plan
  const { data } = line
  const { causes, course } = stripCauses(
    lab.value.state, inForce, { check, time: line.time, figures: data.figures, aims: data.aims, batch: data.batch, isRepeat: data.repeatOf !== undefined, seen }, phone.clock.now(),
  )
  const reasonText = (reason: Cause['reasons'][number]): string => {
    const { facts } = reason
    const text = (name: string): string => (facts[name] === undefined ? '' : String(facts[name]))
    const speed = (name: string): string => (typeof facts[name] === 'number' ? speedText(facts[name], inForce.units.length) : text(name))
    const asked = inForce.checks.find(({ id }) => id === facts['check'])
    return (
      say.reasons[reason.code]?.({
        check: asked ? checkName(inForce, asked.id) : '', keyed: text('keyed'), unit: text('unit') === '1' || text('unit') === 'pH' ? '' : text('unit'),
        aim: asked?.kind === 'reading' ? numberText(asked.limits.aim, decimalsOf(asked.step)) : text('aim'), when: typeof facts['time'] === 'number' ? timeText(facts['time'], inForce.timeZone) : '',
        from: speed('from'), to: speed('to'), material: facts['material'] === undefined ? '' : materialName(inForce, text('material'), words), signs: facts,
        seen: typeof facts['seen'] === 'string' ? say.seen[facts['seen'] as (typeof seeable)[number]].toLowerCase() : '',
      }).replaceAll(/ +/g, ' ').replaceAll(' ,', ',') ?? reason.code
    )
  }
  return (
    <>
      <Card title={say.title}>
        <p class="small quiet">{[say.lead, say.course[course]].filter(Boolean).join(' ')}</p>
        {causes.length === 0 ? <p>{say.none}</p> : null}
        <Rows label={say.title}>
          {causes.map((cause, index) => {
            const settles = cause.settles && inForce.checks.find(({ id }) => id === cause.settles)
            return (
              <Row
                key={cause.code}
                what={<strong>{index + 1} {say.codes[cause.code] ?? cause.code}</strong>}
                under={
                  <>
                    {cause.reasons.map((reason) => <span key={reason.code} class="reason">{reasonText(reason)} </span>)}
                    {say.advice[cause.code] ? <span class="reason">{say.advice[cause.code]} </span> : null}
                    {settles ? <span class="reason settle-it">{say.settle(checkName(inForce, settles.id))}</span> : null}
                  </>
                }
                {...(settles ? { href: `/check/${settles.id}` } : {})}
              />
            )
          })}
        </Rows>
        <fieldset class="choices">
          <legend class="small">{say.seenTitle}</legend>
          {seeable.map((it) => (
            <label key={it}>
              <input type="checkbox" checked={seen.includes(it)} onChange={() => setSeen(seen.includes(it) ? seen.filter((other) => other !== it) : [...seen, it])} />
              <span>{say.seen[it]}</span>
            </label>
          ))}
        </fieldset>
      </Card>
      <GammaCard check={check} line={line} />
    </>
  )
}

const mostShare = 0.1

const GammaCard = ({ check, line }: { check: StripCheck; line: LineOf<'strip'> }) => {
  const { lab, plan, phone } = useApp()
  const say = useWords().causes.bring
  const inForce = plan.value!.plan
  const answer = byTimeOrHeat(lab.value.state, inForce, { check, figures: line.data.figures, aims: line.data.aims }, phone.clock.now())
  if (!answer.ok) return answer.code === 'noGamma' || answer.code === 'noDeveloper' ? null : <Card title={say.title}><p>{say.unknown[answer.code]}</p></Card>
  const { gamma, aim, metresPerMinute, times, celsius } = answer.value
  if (Number(gamma.toFixed(2)) === Number(aim.toFixed(2))) return null
  const speed = (value: number): string => speedText(value, inForce.units.length)
  return (
    <Card title={say.title}>
      <p>{say.lead(numberText(gamma, 2), numberText(aim, 2))}</p>
      <Rows>
        <Row what={<strong>{say.bySpeed}</strong>} value={<strong>{say.speed(speed(metresPerMinute.from), speed(metresPerMinute.to))}</strong>} />
        {times.map(({ station, name, fromMinutes, toMinutes }) => (
          <Row key={station} what={name} value={say.time(numberText(fromMinutes, 2), numberText(toMinutes, 2))} />
        ))}
        {celsius === undefined ? null : <Row what={<strong>{say.byTemperature}</strong>} under={say.heatMoves} value={<strong>{say.celsius(`${celsius > 0 ? '+' : ''}${numberText(celsius, 1)}`)}</strong>} />}
      </Rows>
      {Math.abs(metresPerMinute.to / metresPerMinute.from - 1) > mostShare ? <p class="flagged">{say.far}</p> : null}
      <p class="small quiet">{say.supervisor}</p>
    </Card>
  )
}
