import { useMemo } from 'preact/hooks'
import type { LabPlan } from '../../plan/lab-plan.ts'
import type { ShiftSpan } from '../../plan/shift-time.ts'
import { shiftPage } from '../../projections/shift-page.ts'
import { useApp, useWords } from '../app-context.ts'
import { LinkButton } from '../parts/button.tsx'
import { Card, Row, Rows } from '../parts/card.tsx'
import { shiftBefore, shiftPath } from '../shift/shift-place.ts'
import { useDates } from '../use-dates.ts'

/** The running shift in a few numbers, and whether the one before it still waits for its signature. */
export const ShiftSoFar = ({ plan, span }: { plan: LabPlan; span: ShiftSpan }) => {
  const { lab, now } = useApp()
  const words = useWords()
  const { date } = useDates(plan.timeZone)
  const say = words.board
  const minute = Math.floor(now.value / 60_000)
  const page = useMemo(() => shiftPage({ lab: lab.value.log, plan, span, now: now.value }), [lab.value, plan, span.from, minute])
  const before = shiftBefore(lab.value.log, plan, span)
  const { lines } = lab.value.ledger
  const isUnsigned =
    lines.some(({ time, kind }) => kind !== 'plan' && time >= before.from && time < before.to) &&
    !lines.some((line) => line.kind === 'signOff' && line.data.shift === before.shift.id && line.data.date === before.date)
  const { counts } = page.coverage
  const toAcknowledge = page.incidents.filter(({ seen }) => !seen).length
  return (
    <Card title={say.shift(span.shift.name)}>
      <ul class="tallies">
        {([[counts.done, say.inTime], [counts.late, say.lateDone], [counts.missed + counts.missedWithReason, say.missedSoFar], [page.exceptions.length, say.outSoFar]] as const).map(([number, says]) => (
          <li key={says}><strong>{number}</strong><span>{says}</span></li>
        ))}
      </ul>
      <Rows>
        {toAcknowledge ? <Row what={say.incidents(toAcknowledge)} href={shiftPath(span)} /> : null}
        {isUnsigned ? <Row what={say.unsigned(before.shift.name, date(before.from))} href={shiftPath(before)} /> : null}
      </Rows>
      <LinkButton wide href={shiftPath(span)}>{say.toShift}</LinkButton>
    </Card>
  )
}
