import { useState } from 'preact/hooks'
import { checkOf } from '../../plan/find.ts'
import { fullName } from '../../plan/full-name.ts'
import type { LabPlan } from '../../plan/lab-plan.ts'
import type { Exception } from '../../projections/exceptions.ts'
import type { ShiftHandover } from '../../projections/shift-handover.ts'
import { handoverOf } from '../../projections/shift-handover.ts'
import type { ShiftPage } from '../../projections/shift-page.ts'
import type { EntryId } from '../../record/ids.ts'
import { useApp, useWords } from '../app-context.ts'
import { Banner } from '../parts/banner.tsx'
import { Button } from '../parts/button.tsx'
import { Card, Row, Rows } from '../parts/card.tsx'
import { useDates } from '../use-dates.ts'
import { HandoverSheet } from './handover-sheet.tsx'
import { personName } from './line-text.ts'
import { shiftBefore } from './shift-place.ts'
import { useWalk } from './use-walk.ts'
import { WalkList } from './walk-list.tsx'

interface Given {
  plan: LabPlan
  page: ShiftPage
  onEvidence(id: EntryId): void
}

const exceptionText = (plan: LabPlan, it: Exception): string => `${fullName(plan, checkOf(plan, it.check))} ${it.marks.at(-1)?.keyed ?? ''}`.trim()

/** Who gave the shift over and who took it, with what stays open. */
export const HandoverCard = ({ plan, page, isClosed, onEvidence }: Given & { isClosed: boolean }) => {
  const words = useWords().shift.handover
  const [isOpen, setIsOpen] = useState(false)
  const { given, accepted } = page.handover
  const open = page.exceptions.filter((it) => it.isOpen).map(({ exception }) => exception)
  return (
    <Card title={words.title}>
      {given ? (
        <>
          {given.data.notes ? <p class="said">{given.data.notes}</p> : null}
          {given.data.open.length ? (
            <Rows label={words.open}>
              {given.data.open.map((id) => {
                const it = page.exceptions.find(({ exception }) => exception.id === id)?.exception
                return it ? <Row key={id} what={exceptionText(plan, it)} under={words.open} href={`/exception/${id}`} /> : null
              })}
            </Rows>
          ) : null}
        </>
      ) : (
        <p>{words.none}</p>
      )}
      <HandoverNames plan={plan} handover={page.handover} onEvidence={onEvidence} />
      {isClosed || accepted ? null : <Button wide onPress={() => setIsOpen(true)}>{given ? words.walkAndAccept : words.give}</Button>}
      {isOpen ? <HandoverSheet plan={plan} span={page.span} handover={page.handover} open={open} onDone={() => setIsOpen(false)} /> : null}
    </Card>
  )
}

const HandoverNames = ({ plan, handover: { given, accepted }, onEvidence }: { plan: LabPlan; handover: ShiftHandover; onEvidence(id: EntryId): void }) => {
  const words = useWords().shift.handover
  const { when } = useDates(plan.timeZone)
  if (!given) return null
  return (
    <Rows>
      <Row what={<span class="small">{words.givenBy(personName(plan, given.person), when(given.time))}</span>} onPress={() => onEvidence(given.id)} />
      {accepted ? (
        <Row
          what={<span class="small">{words.acceptedBy(personName(plan, accepted.person), when(accepted.time))}</span>}
          under={accepted.data.walked?.length ? words.walked(accepted.data.walked.length) : undefined}
          onPress={() => onEvidence(accepted.id)}
        />
      ) : (
        <Row what={<span class="small">{words.notAccepted}</span>} />
      )}
    </Rows>
  )
}

/** What the shift before handed over to this one: its words, and everything that carries over, as it stands now. */
export const TakenOverCard = ({ plan, page, onEvidence }: Given) => {
  const { lab } = useApp()
  const words = useWords().shift.handover
  const [isOpen, setIsOpen] = useState(false)
  const before = shiftBefore(lab.value.log, plan, page.span)
  const handover = handoverOf(lab.value.ledger, before)
  const rows = useWalk()
  const { given, accepted } = handover
  if (!given) return null
  const carried = rows.filter(({ items }) => items.some(({ what }) => what !== 'machine'))
  return (
    <Card title={words.takenOver(before.shift.name)}>
      {accepted ? null : (
        <Banner kind="warn" title={words.toAccept}>
          <Button wide onPress={() => setIsOpen(true)}>{words.walkAndAccept}</Button>
        </Banner>
      )}
      <p class="said">{given.data.notes}</p>
      {carried.length ? <WalkList rows={carried} label={words.carried} /> : <p class="quiet">{words.openNone}</p>}
      <HandoverNames plan={plan} handover={handover} onEvidence={onEvidence} />
      {isOpen ? <HandoverSheet plan={plan} span={before} handover={handover} open={[]} onDone={() => setIsOpen(false)} /> : null}
    </Card>
  )
}
