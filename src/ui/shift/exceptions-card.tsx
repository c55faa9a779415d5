import { useState } from 'preact/hooks'
import { checkOf } from '../../plan/find.ts'
import { fullName } from '../../plan/full-name.ts'
import type { LabPlan } from '../../plan/lab-plan.ts'
import type { Ledger } from '../../projections/ledger.ts'
import type { ShiftException, ShiftPage } from '../../projections/shift-page.ts'
import type { EntryId } from '../../record/ids.ts'
import { useWords } from '../app-context.ts'
import { timeText } from '../format.ts'
import { materialName } from '../material-name.ts'
import { Card, Row, Rows } from '../parts/card.tsx'
import { filmText } from '../units.ts'
import { EntriesSheet } from './entries-sheet.tsx'
import { ExceptionSheet } from './exception-sheet.tsx'
import { lineText } from './line-text.ts'

interface Given {
  plan: LabPlan
  page: ShiftPage
  ledger: Ledger
  isSigned: boolean
  onEvidence(id: EntryId): void
}

/** What was out of limits: its cause, its action, its re-check and the minutes it was open. Each opens what lies behind it. */
export const ExceptionsCard = ({ plan, page, ledger, isSigned, onEvidence }: Given) => {
  const words = useWords().shift.exceptions
  const [open, setOpen] = useState<EntryId>()
  const [warned, setWarned] = useState(false)
  const found = open && page.exceptions.find(({ exception }) => exception.id === open)
  if (page.exceptions.length + page.warned.length === 0) return null
  return (
    <Card title={words.title} beside={page.exceptions.length || undefined}>
      {page.warned.length ? <Rows><Row what={<span class="small quiet">{words.warned(page.warned.length)}</span>} onPress={() => setWarned(true)} /></Rows> : null}
      <Rows>
        {page.exceptions.map((it) => (
          <Row
            key={it.exception.id}
            what={`${fullName(plan, checkOf(plan, it.exception.check))} ${it.exception.marks[0]?.keyed ?? ''}`}
            under={<Story plan={plan} found={it} ledger={ledger} />}
            value={it.isOpen ? <strong class="small">{words.open}</strong> : undefined}
            onPress={() => setOpen(it.exception.id)}
          />
        ))}
      </Rows>
      {warned ? <EntriesSheet title={words.warned(page.warned.length)} plan={plan} ledger={ledger} of={page.warned} onEvidence={onEvidence} onDone={() => setWarned(false)} /> : null}
      {found ? <ExceptionSheet plan={plan} ledger={ledger} found={found} isOpen={!isSigned} onEvidence={onEvidence} onDone={() => setOpen(undefined)} /> : null}
    </Card>
  )
}

/** In words that also serve on paper, where nothing can be opened. */
const Story = ({ plan, found, ledger }: { plan: LabPlan; found: ShiftException; ledger: Ledger }) => {
  const all = useWords()
  const words = all.shift.exceptions
  const { exception: it, cause, actions, recheck, minutesOpen, filmAtRisk, isCarriedOver } = found
  const clock = (time: number): string => timeText(time, plan.timeZone)
  const done = [
    ...it.doses.map((dose) => ({ time: dose.time, says: `${dose.poured.amount} ${dose.poured.unit} ${materialName(plan, dose.material, all)} ${clock(dose.time)}` })),
    ...actions.flatMap((id) => {
      const line = ledger.line(id)
      return line ? [{ time: line.time, says: `${lineText(line, plan, all)} ${clock(line.time)}` }] : []
    }),
  ].sort((a, b) => a.time - b.time)
  const again = it.marks.find(({ id }) => id === recheck)
  const lines = [
    [clock(it.openedAt), isCarriedOver ? words.carriedOver : '', it.state === 'closed' ? words.closed[it.closedHow ?? 'byHand'] : '', words.minutes(all.time.span(minutesOpen * 60_000))],
    [`${words.cause}: ${cause?.text ?? words.notSaid}`],
    [`${words.action}: ${done.length ? done.map(({ says }) => says).join('; ') : words.nothingDone}`],
    [again ? `${words.recheck}: ${again.keyed ?? ''} ${again.verdict} ${clock(again.time)}`.replace(/ +/g, ' ') : ''],
    [filmAtRisk.metres > 0 ? `${filmText(filmAtRisk.metres, plan.units.length)} ${all.shift.holds.atRisk}` : ''],
  ]
  return <>{lines.map((parts) => parts.filter(Boolean).join(' · ')).filter(Boolean).map((text) => <span key={text} class="line">{text}</span>)}</>
}
