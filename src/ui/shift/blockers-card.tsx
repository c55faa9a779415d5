import { useState } from 'preact/hooks'
import { personOf } from '../../plan/find.ts'
import type { LabPlan } from '../../plan/lab-plan.ts'
import type { Ledger } from '../../projections/ledger.ts'
import { canBeSettled, type Blocker } from '../../projections/shift-blockers.ts'
import type { ShiftPage } from '../../projections/shift-page.ts'
import type { EntryId } from '../../record/ids.ts'
import { useApp, useWords } from '../app-context.ts'
import { timeText } from '../format.ts'
import { Banner } from '../parts/banner.tsx'
import { Button } from '../parts/button.tsx'
import { Card, Row, Rows } from '../parts/card.tsx'
import { GapSheet, type Gap } from './gap-sheet.tsx'
import { HandoverSheet } from './handover-sheet.tsx'
import { checkName, lineText } from './line-text.ts'

interface Given {
  plan: LabPlan
  page: ShiftPage
  ledger: Ledger
  onEvidence(id: EntryId): void
  onIncident(id: EntryId): void
}

interface MissedTogether {
  machine: string
  missed: Extract<Blocker, { code: 'missedWithoutReason' }>[]
}

/** Fewer are listed one by one. */
const together = 3

/** What was missed on a machine where nobody walked has one reason, as a rule. */
const missedTogether = (plan: LabPlan, blockers: readonly Blocker[]): MissedTogether[] =>
  plan.machines.flatMap(({ name, stations }): MissedTogether[] => {
    const own = new Set(plan.checks.flatMap((check) => (stations.some(({ id }) => id === check.station) ? [check.id as string] : [])))
    const missed = blockers.flatMap((it) => (it.code === 'missedWithoutReason' && own.has(it.check) ? [it] : []))
    return missed.length >= together ? [{ machine: name, missed }] : []
  })

/** What stands between the shift and its signature, each with the tap that settles it. */
export const BlockersCard = ({ plan, page, ledger, onEvidence, onIncident }: Given) => {
  const { person } = useApp()
  const words = useWords().shift.blockers
  const [open, setOpen] = useState<Gap | 'handover'>()
  const [isLong, setIsLong] = useState(false)
  const toSettle = page.blockers.filter(canBeSettled)
  const lasting = page.blockers.filter((it) => !canBeSettled(it))
  const groups = missedTogether(plan, toSettle)
  const grouped = new Set<Blocker>(groups.flatMap(({ missed }) => missed))
  const isSupervisor = person.value !== null && personOf(plan, person.value)?.role === 'supervisor'
  const row = (blocker: Blocker) => <BlockerRow key={keyOf(blocker)} blocker={blocker} plan={plan} page={page} ledger={ledger} onEvidence={onEvidence} onIncident={onIncident} onOpen={setOpen} />
  return (
    <>
      {toSettle.length ? (
        <Card title={words.title} beside={toSettle.length}>
          <Rows>
            {groups.map(({ machine, missed }) => (
              <Row
                key={machine}
                what={words.missed(missed.length, machine)}
                under={[...new Set(missed.map(({ due }) => timeText(due, plan.timeZone)))].slice(0, 4).join(', ')}
                onPress={() => setOpen({ check: missed[0]!.check, due: missed[0]!.due, scope: 'machine' })}
              />
            ))}
            {(isLong ? toSettle : toSettle.filter((it) => !grouped.has(it))).map(row)}
            {grouped.size && !isLong ? <Row what={words.oneByOne(grouped.size)} onPress={() => setIsLong(true)} /> : null}
          </Rows>
        </Card>
      ) : (
        <Banner title={words.settled}>{isSupervisor ? null : <Button wide onPress={() => (person.value = null)}>{words.handOn}</Button>}</Banner>
      )}
      {lasting.length ? (
        <Card title={words.lasting} beside={lasting.length}>
          <p class="small quiet">{words.lastingMore}</p>
          <Rows>{lasting.map(row)}</Rows>
        </Card>
      ) : null}
      {open === 'handover' ? <HandoverSheet plan={plan} span={page.span} handover={page.handover} open={page.exceptions.filter((it) => it.isOpen).map(({ exception }) => exception)} onDone={() => setOpen(undefined)} /> : null}
      {open && open !== 'handover' ? <GapSheet plan={plan} page={page} gap={open} onDone={() => setOpen(undefined)} /> : null}
    </>
  )
}

const keyOf = (blocker: Blocker): string => JSON.stringify(blocker)

interface RowGiven extends Given {
  blocker: Blocker
  onOpen(what: Gap | 'handover'): void
}

const BlockerRow = ({ blocker, plan, page, ledger, onEvidence, onIncident, onOpen }: RowGiven) => {
  const { person } = useApp()
  const all = useWords()
  const words = all.shift.blockers
  const what = words.what[blocker.code]
  const clock = (time: number): string => timeText(time, plan.timeZone)
  const textOf = (id: EntryId): string => {
    const line = ledger.line(id)
    return line ? `${clock(line.time)} · ${lineText(line, plan, all)}` : ''
  }
  switch (blocker.code) {
    case 'shiftRunning':
      return <Row what={what} under={words.until(clock(page.span.to))} />
    case 'missedWithoutReason':
      return <Row what={what} under={`${clock(blocker.due)} · ${checkName(plan, blocker.check)}`} onPress={() => onOpen({ check: blocker.check, due: blocker.due })} />
    case 'stripUnread':
      return <Row what={what} under={`${clock(blocker.due)} · ${checkName(plan, blocker.check)}`} href={`/check/${blocker.check}`} />
    case 'stripNotRepeated':
    case 'exceptionOpen':
      return <Row what={what} under={textOf(blocker.ref)} href={`/exception/${blocker.ref}`} />
    case 'holdOpen': {
      const hold = page.holds.find((it) => it.hold.id === blocker.ref)?.hold
      return <Row what={what} under={textOf(blocker.ref)} href={hold ? `/machine/${hold.machine}` : '/now'} />
    }
    case 'addWithoutRecheck': {
      const add = page.adds.find(({ id }) => id === blocker.ref)
      return <Row what={what} under={textOf(blocker.ref)} href={add?.exception ? `/exception/${add.exception}` : add ? `/station/${add.station}` : '/now'} />
    }
    case 'instrumentNotProved':
      return <Row what={what} under={page.instruments.find(({ check }) => check === blocker.check)?.instrument ?? checkName(plan, blocker.check)} href={`/check/${blocker.check}`} />
    case 'incidentNotSeen':
      return <Row what={what} under={textOf(blocker.ref)} onPress={() => onIncident(blocker.ref)} />
    case 'addNotCheckable':
    case 'addWithoutCaution':
    case 'addWithoutSecondPerson':
    case 'changedByAnother':
    case 'verdictDiffers':
      return <Row what={what} under={textOf(blocker.ref)} onPress={() => onEvidence(blocker.ref)} />
    case 'handoverNotGiven':
      return <Row what={what} onPress={() => onOpen('handover')} />
    case 'handoverNotAccepted':
      return page.handover.given?.person === person.value ? (
        <Row what={what} under={all.shift.handover.notYourself} onPress={() => (person.value = null)} />
      ) : (
        <Row what={what} onPress={() => onOpen('handover')} />
      )
  }
}
