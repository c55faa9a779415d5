import type { Check } from '../../plan/check.ts'
import type { LabPlan } from '../../plan/lab-plan.ts'
import { personOf } from '../../plan/find.ts'
import type { Exception } from '../../projections/exceptions.ts'
import { useWords } from '../app-context.ts'
import { decimalsOf, numberText, timeText } from '../format.ts'
import { Card, Row, Rows } from '../parts/card.tsx'
import { VerdictMark } from '../parts/verdict-mark.tsx'
import { shownAmount } from './amount.ts'

/** Readings and doses of an exception in the order in which they were made. */
export const History = ({ exception, check, plan }: { exception: Exception; check: Check; plan: LabPlan }) => {
  const words = useWords()
  const say = words.exception
  const step = check.kind === 'reading' ? check.step : 1
  const lines = [
    ...exception.marks.map((mark) => ({ time: mark.time, mark })),
    ...exception.doses.map((dose) => ({ time: dose.time, dose })),
  ].sort((a, b) => a.time - b.time)
  return (
    <Card title={say.history}>
      <Rows>
        {lines.map((line) => {
          if ('mark' in line) {
            const { mark } = line
            const value = mark.value === undefined ? (mark.verdict === 'IN' ? words.round.verdict.right : words.now.notRight) : (mark.keyed ?? numberText(mark.value, decimalsOf(step)))
            return <Row key={mark.id} what={say.read(value)} under={say.by(timeText(mark.time, plan.timeZone), (mark.person && personOf(plan, mark.person)?.name) ?? '')} value={<VerdictMark verdict={mark.verdict} />} />
          }
          const { dose } = line
          const { text, unit } = shownAmount(dose.poured.amount, dose.poured.unit)
          const material = dose.material === 'water' ? say.water : (plan.materials.find(({ id }) => id === dose.material)?.name ?? dose.material)
          return (
            <Row
              key={dose.id}
              what={say.poured(`${text} ${unit}`, material)}
              under={say.by(timeText(dose.time, plan.timeZone), (dose.person && personOf(plan, dose.person)?.name) ?? '')}
              value={dose.predicted ? say.expected(numberText(dose.predicted.to, decimalsOf(step))) : undefined}
            />
          )
        })}
      </Rows>
    </Card>
  )
}
