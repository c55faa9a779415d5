import { useMemo, useState } from 'preact/hooks'
import { personOf } from '../../plan/find.ts'
import type { LabPlan } from '../../plan/lab-plan.ts'
import type { ShiftSpan } from '../../plan/shift-time.ts'
import { canBeSettled } from '../../projections/shift-blockers.ts'
import type { EntryId } from '../../record/ids.ts'
import { useApp, useWords } from '../app-context.ts'
import { timeText } from '../format.ts'
import { Banner, Empty } from '../parts/banner.tsx'
import { Button, LinkButton } from '../parts/button.tsx'
import { Backward, Forward } from '../parts/icons.tsx'
import { Screen } from '../screen.tsx'
import { useDates } from '../use-dates.ts'
import { AddsCard } from './adds-card.tsx'
import { BlockersCard } from './blockers-card.tsx'
import { CoverageCards } from './coverage-cards.tsx'
import { EntrySheet } from './entry-sheet.tsx'
import { FilesCard } from './files-card.tsx'
import { ExceptionsCard } from './exceptions-card.tsx'
import { HandoverCard, TakenOverCard } from './handover-card.tsx'
import { HoldsCard } from './holds-card.tsx'
import { IncidentsCard, IncidentSheet } from './incidents-card.tsx'
import { LateCard } from './late-card.tsx'
import { LogCard } from './log-card.tsx'
import { NothingCard } from './nothing-card.tsx'
import { PhonesCard } from './phones-card.tsx'
import { PrintHead } from './print-head.tsx'
import { CautionsCard, ChangesCard, InstrumentsCard } from './proof-cards.tsx'
import { shiftAfter, shiftBefore, shiftNamed, shiftPath } from './shift-place.ts'
import { SignSheet } from './sign-sheet.tsx'
import { SignatureCard } from './signature-card.tsx'
import { StripsCard } from './strips-card.tsx'
import { useShiftPage } from './use-shift-page.ts'
import { WasteCard } from './waste-card.tsx'
import './shift.css'

/** Notes that stand in a card of their own. */
const elsewhere: ReadonlySet<string> = new Set(['incident', 'waste', 'cause'])
/** While a shift runs, a phone not heard from for so long is named. */
const silentMilliseconds = 60 * 60_000

/** A shift on one page, at its own address: the one that runs now, or `/shift/<date>/<shift>`. */
export const ShiftScreen = () => {
  const { plan, now, lab, router } = useApp()
  const words = useWords()
  const inForce = plan.value?.plan
  const minute = Math.floor(now.value / 60_000)
  const place = router.here.value.rest
  const span = useMemo(() => inForce && shiftNamed(lab.value.log, inForce, place, now.value), [inForce, place.join('/'), minute])
  if (!inForce) return <Screen title={words.shift.title}><Empty title={words.now.noPlan.title}>{words.now.noPlan.more}</Empty></Screen>
  if (!span) return <Screen title={words.shift.notFound.title} next={<LinkButton kind="go" href="/shift">{words.shift.title}</LinkButton>}><p>{words.shift.notFound.more}</p></Screen>
  return <Shift key={shiftPath(span)} inForce={inForce} span={span} />
}

const Shift = ({ inForce, span }: { inForce: LabPlan; span: ShiftSpan }) => {
  const { now, person, router, lab } = useApp()
  const all = useWords()
  const { date } = useDates(inForce.timeZone)
  const words = all.shift
  const [evidence, setEvidence] = useState<EntryId>()
  const [incident, setIncident] = useState<EntryId>()
  const [isSigning, setIsSigning] = useState(false)
  const it = useShiftPage(span, inForce)
  const before = shiftBefore(lab.value.log, inForce, span)
  const meta = `${date(span.from)} · ${words.span(timeText(span.from, inForce.timeZone), timeText(span.to, inForce.timeZone))}`
  if (!it) return <Screen title={span.shift.name} meta={meta}><Banner title={all.shell.loading} /></Screen>
  const { live, shown, plan, signed } = it
  const { ledger } = it.lab
  const signer = person.value !== null && personOf(inForce, person.value)?.role === 'supervisor' ? person.value : undefined
  const toSettle = live.blockers.filter(canBeSettled).length
  const isNow = now.value >= span.from && now.value < span.to
  const isBeforeUnsigned = isNow && !ledger.lines.some((line) => line.kind === 'signOff' && line.data.shift === before.shift.id && line.data.date === before.date) && ledger.lines.some(({ time, kind }) => kind !== 'plan' && time >= before.from && time < before.to)
  const incidentShown = incident && (signed ? shown : live).incidents.find(({ line }) => line.id === incident)
  const given = { plan, page: shown, onEvidence: setEvidence }
  return (
    <Screen
      title={span.shift.name}
      meta={meta}
      next={
        !signed && live.isOver && signer ? (
          <Button kind="go" notYet={toSettle ? words.sign.toSettle(toSettle) : undefined} onPress={() => setIsSigning(true)}>{toSettle ? words.sign.toSettle(toSettle) : words.sign.button}</Button>
        ) : null
      }
    >
      <PrintHead plan={plan} page={shown} signed={signed} />
      <div class="shift-nav">
        <button type="button" class="icon-button" aria-label={words.earlier} onClick={() => router.go(shiftPath(before), 'replace')}><Backward /></button>
        <strong>{signed ? (signed.isProvisional ? words.signed.provisional : words.signed.title) : live.isOver ? words.state.over : words.state.running}</strong>
        <button type="button" class="icon-button" aria-label={words.later} aria-disabled={span.to > now.value} onClick={() => (span.to > now.value ? undefined : router.go(shiftPath(shiftAfter(lab.value.log, inForce, span)), 'replace'))}><Forward /></button>
      </div>
      {isBeforeUnsigned ? (
        <Banner title={words.unsignedBefore(before.shift.name, date(before.from))}>
          <LinkButton wide href={shiftPath(before)}>{words.toThatShift}</LinkButton>
        </Banner>
      ) : null}
      <div class="shift-page columns">
        {signed ? (
          <>
            <SignatureCard plan={plan} page={shown} signature={signed.signature} isProvisional={signed.isProvisional} />
            <LateCard plan={plan} ledger={ledger} signature={signed.signature} onEvidence={setEvidence} />
          </>
        ) : (
          <BlockersCard plan={plan} page={live} ledger={ledger} onEvidence={setEvidence} onIncident={setIncident} />
        )}
        {isNow ? <TakenOverCard {...given} /> : null}
        <HandoverCard {...given} isClosed={signed !== undefined} />
        <CoverageCards {...given} ledger={ledger} />
        <ExceptionsCard {...given} ledger={ledger} isSigned={signed !== undefined} />
        <HoldsCard {...given} />
        <StripsCard {...given} ledger={ledger} strips={it.lab.state.strips} />
        <AddsCard {...given} />
        <CautionsCard {...given} />
        <InstrumentsCard {...given} />
        <PhonesCard plan={plan} since={Math.min(span.to, now.value - silentMilliseconds)} />
        <WasteCard {...given} ledger={ledger} />
        <IncidentsCard plan={plan} page={shown} onIncident={setIncident} />
        <NothingCard page={shown} />
        <ChangesCard {...given} ledger={ledger} />
        <LogCard plan={plan} notes={shown.notes.filter(({ data }) => !elsewhere.has(data.about))} open={isNow && !signed} onEvidence={setEvidence} />
        <div class="files"><FilesCard plan={plan} span={span} ledger={ledger} late={signed?.signature.late ?? []} /></div>
      </div>
      {incidentShown ? <IncidentSheet plan={plan} incident={incidentShown} canAcknowledge={!signed} onEvidence={setEvidence} onDone={() => setIncident(undefined)} /> : null}
      {evidence ? <EntrySheet id={evidence} plan={plan} ledger={ledger} signature={signed?.signature} onClose={() => setEvidence(undefined)} /> : null}
      {isSigning && signer ? <SignSheet plan={plan} page={live} by={signer} onDone={() => setIsSigning(false)} /> : null}
    </Screen>
  )
}
