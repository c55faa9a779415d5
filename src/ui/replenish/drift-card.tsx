import { judge } from '../../plan/limits.ts'
import type { DisplayUnits } from '../../plan/lab-plan.ts'
import { driftOver, type DriftNow } from '../../projections/drift.ts'
import { useWords } from '../app-context.ts'
import { decimalsOf, numberText } from '../format.ts'
import { Button } from '../parts/button.tsx'
import { Card } from '../parts/card.tsx'
import { VerdictMark } from '../parts/verdict-mark.tsx'
import { filmText } from '../units.ts'
import { DriftChart } from './drift-chart.tsx'

interface DriftCardProps {
  drift: DriftNow
  metres: number
  millilitresPerMetre: number
  density: number
  length: DisplayUnits['length']
  onTry(millilitresPerMetre: number): void
}

/** One constituent over the coming run: its course between its limits, when it meets one, and the rate that would hold it. */
export const DriftCard = ({ drift, metres, millilitresPerMetre, density, length, onTry }: DriftCardProps) => {
  const words = useWords().replenish
  const { check, machine, metresPerMinute } = drift
  const { course, steadyGramsPerLitre, meets, suggestedMillilitresPerMetre: suggested } = driftOver(drift, { metres, millilitresPerMetre, density })
  const decimals = decimalsOf(check.step)
  const text = (value: number): string => `${numberText(value, decimals)} g/L`
  const end = course.at(-1)!.gramsPerLitre
  const isOut = judge(check.limits, drift.gramsPerLitre).verdict === 'ACT'
  return (
    <Card title={check.name} beside={machine.name}>
      <p><strong>{meets ? words.meets[meets.limit](check.name.toLowerCase(), filmText(meets.metres, length), text(meets.at)) : isOut ? words.already(check.name) : words.stays(check.name.toLowerCase())}</strong></p>
      <DriftChart course={course} limits={check.limits} meets={meets?.metres} lengthText={(at) => filmText(at, length)} text={(value) => numberText(value, decimals)} name={words.curve(check.name, text(drift.gramsPerLitre), text(end), filmText(metres, length))} />
      <dl class="pairs">
        <dt>{words.now}</dt><dd>{text(drift.gramsPerLitre)} <VerdictMark verdict={judge(check.limits, drift.gramsPerLitre).verdict} /></dd>
        <dt>{words.after}</dt><dd>{text(end)} <VerdictMark verdict={judge(check.limits, end).verdict} /></dd>
        <dt>{words.settles}</dt><dd>{steadyGramsPerLitre === null ? words.runsOff : text(steadyGramsPerLitre)}</dd>
      </dl>
      {suggested === undefined ? (
        <p class="flagged">{words.cannot}</p>
      ) : (
        <>
          <p>{words.suggested(`${numberText(suggested, 2)} mL/m (${numberText((suggested * metresPerMinute) / 1000, 2)} L/min)`)}</p>
          <Button onPress={() => onTry(suggested)}>{words.take}</Button>
        </>
      )}
    </Card>
  )
}
