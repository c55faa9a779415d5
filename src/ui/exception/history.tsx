import type { Check } from '../../plan/check.ts'
import type { LabPlan } from '../../plan/lab-plan.ts'
import { personOf } from '../../plan/find.ts'
import type { PersonId } from '../../plan/ids.ts'
import type { Exception } from '../../projections/exceptions.ts'
import type { Ledger } from '../../projections/ledger.ts'
import type { LineOf } from '../../projections/line.ts'
import { useApp, useWords } from '../app-context.ts'
import { decimalsOf, numberText, timeText } from '../format.ts'
import { materialName } from '../material-name.ts'
import { Card, Row, Rows } from '../parts/card.tsx'
import { VerdictMark } from '../parts/verdict-mark.tsx'
import { shortText } from '../units.ts'
import { shownAmount } from './amount.ts'

/** What was done besides dosing: set at the machine, run off, written down. */
const deedsOf = (exception: Exception, ledger: Ledger): (LineOf<'note'> | LineOf<'runOff'>)[] =>
  ledger.lines
    .slice(ledger.indexAt(exception.openedAt))
    .filter((line): line is LineOf<'note'> | LineOf<'runOff'> => (line.kind === 'note' || line.kind === 'runOff') && line.data.exception === exception.id && !line.withdrawnBy)

/** Readings, doses and whatever else was done about an exception, in the order in which it happened. */
export const History = ({ exception, check, plan }: { exception: Exception; check: Check; plan: LabPlan }) => {
  const { lab } = useApp()
  const words = useWords()
  const say = words.exception
  const step = check.kind === 'reading' ? check.step : 1
  const when = (time: number, person: PersonId | null): string => say.by(timeText(time, plan.timeZone), (person && personOf(plan, person)?.name) ?? '')
  const rows = [
    ...exception.marks.map((mark) => {
      const value = mark.value === undefined ? (mark.verdict === 'IN' ? words.round.verdict.right : words.now.notRight) : (mark.keyed?.replace('-', '−') ?? numberText(mark.value, decimalsOf(step)))
      return { time: mark.time, row: <Row key={mark.id} what={say.read(value)} under={when(mark.time, mark.person)} value={<VerdictMark verdict={mark.verdict} />} /> }
    }),
    ...exception.doses.map((dose) => {
      const { text, unit } = shownAmount(dose.poured.amount, dose.poured.unit)
      const material = materialName(plan, dose.material, words)
      const line = lab.value.ledger.line(dose.id)
      const why = line?.kind === 'add' ? line.data.overruled : undefined
      return {
        time: dose.time,
        row: (
          <Row
            key={dose.id}
            what={say.poured(`${text} ${unit}`, material)}
            under={why ? `${when(dose.time, dose.person)} · ${say.ownReason(why)}` : when(dose.time, dose.person)}
            value={dose.predicted ? say.expected(numberText(dose.predicted.to, decimalsOf(step))) : undefined}
          />
        ),
      }
    }),
    ...deedsOf(exception, lab.value.ledger).map((line) => {
      const says = line.kind === 'note' ? line.data.text : say.ranOff(shortText(line.data.litres, 1), line.data.destination.to === 'drum' ? (words.waste.drums[line.data.destination.drum] ?? '') : words.waste.to[line.data.destination.to])
      return { time: line.time, row: <Row key={line.id} what={says} under={when(line.time, line.person)} /> }
    }),
  ].sort((a, b) => a.time - b.time)
  return (
    <Card title={say.history}>
      <Rows>{rows.map(({ row }) => row)}</Rows>
    </Card>
  )
}
