import { useState } from 'preact/hooks'
import { answers } from '../../corrections/remedies.ts'
import { checkOf, placeOf } from '../../plan/find.ts'
import type { LabPlan } from '../../plan/lab-plan.ts'
import { mixingUntil, phaseAt, type Exception } from '../../projections/exceptions.ts'
import { filmAtRiskOf } from '../../projections/film-at-risk.ts'
import { standingHolds } from '../../projections/holds.ts'
import { useApp, useWords } from '../app-context.ts'
import { decimalsOf, numberText, timeText } from '../format.ts'
import { AskHold } from '../now/hold-card.tsx'
import { PairCards } from '../now/pair-cards.tsx'
import { seenAt } from '../mixing-seen.ts'
import { Banner } from '../parts/banner.tsx'
import { BathGauge } from '../parts/bath-gauge.tsx'
import { Button, LinkButton } from '../parts/button.tsx'
import { VerdictMark } from '../parts/verdict-mark.tsx'
import { Screen } from '../screen.tsx'
import { filmText } from '../units.ts'
import { shownAmount } from './amount.ts'
import { CloseSheet } from './close-sheet.tsx'
import { History } from './history.tsx'
import { knownOf } from './known.ts'
import { Mixing } from './mixing.tsx'
import { Remedies } from './remedies.tsx'
import './exception.css'

/** How an exception stands and the one thing that it waits for. */
export const ExceptionView = ({ exception, plan }: { exception: Exception; plan: LabPlan }) => {
  const { lab, now, phone } = useApp()
  const words = useWords()
  const say = words.exception
  const [open, setOpen] = useState<'hold' | 'close'>()
  const { state, ledger } = lab.value
  const check = checkOf(plan, exception.check)
  const { machine, station } = placeOf(plan, exception.station)
  const mark = exception.marks.at(-1)!
  const phase = phaseAt(exception, seenAt(phone, exception))
  // Before the repeat the first value is not shown: it would be copied.
  const shownValue = phase === 'toConfirm' ? undefined : mark.value
  const risk = filmAtRiskOf(state, exception, now.value)
  const isHeld = standingHolds(state.holds, machine.id).length > 0
  const found = phase === 'toCorrect' ? answers(state, plan, exception.id, now.value, knownOf(state, ledger, exception, { lots: {} })) : []
  const checkHref = `/check/${exception.check}`
  return (
    <Screen
      title={check.name}
      back
      meta={station.name}
      next={
        phase === 'toConfirm' ? (
          <LinkButton kind="go" href={checkHref}>{words.round.verdict.readAgain}</LinkButton>
        ) : phase === 'toRecheck' ? (
          <LinkButton kind="go" href={checkHref}>{words.now.round.recheck(check.name)}</LinkButton>
        ) : null
      }
    >
      <div class="found">
        {check.kind === 'reading' && shownValue !== undefined ? <BathGauge limits={check.limits} value={shownValue} name={words.round.check.gauge(check.name, mark.keyed)} /> : null}
        <div>
          <p class="found-value">
            {check.kind !== 'reading' || mark.value === undefined ? <strong>{mark.verdict === 'IN' ? words.round.verdict.right : words.now.notRight}</strong> : shownValue === undefined ? null : <strong>{mark.keyed?.replace('-', '−') ?? numberText(shownValue, decimalsOf(check.step))}</strong>}
            <VerdictMark verdict={mark.verdict} />
          </p>
          <p class="quiet">
            {check.kind === 'reading' ? words.round.check.aim(`${numberText(check.limits.aim, decimalsOf(check.step))} ${check.unit === '1' || check.unit === 'pH' ? '' : check.unit}`.trim()) : null}
          </p>
          <p>{say.openSince(timeText(exception.openedAt, plan.timeZone))}</p>
          {risk.metres > 0 && phase !== 'closed' ? <p>{words.now.atRisk}: <strong>{filmText(risk.metres, plan.units.length)}</strong></p> : null}
        </div>
      </div>
      {isHeld ? <Banner kind="stop" title={say.machineHeld} /> : null}
      {phase === 'toConfirm' ? <Banner kind="warn" title={words.round.verdict.confirm} /> : null}
      {exception.doses.filter(({ isOver }) => isOver && phase !== 'closed').map((dose) => {
        const { text, unit } = shownAmount(dose.poured.amount, dose.poured.unit)
        return <Banner key={dose.id} kind="stop" title={[say.overPoured(`${text} ${unit}`, ''), ...(dose.beyond ?? []).map((code) => say.beyond[code] ?? code)].join(' ')}>{say.overPouredMore}</Banner>
      })}
      {phase === 'mixing' ? <Mixing exception={exception} until={mixingUntil(exception)} check={check.name} href={checkHref} /> : null}
      {phase === 'toRecheck' ? <Banner kind="warn" title={mark.time >= mixingUntil(exception) ? say.mixedOnceMore : say.mixed} /> : null}
      {phase === 'closed' ? <Banner title={exception.closedHow === 'byHand' ? say.closedByHand(say.reasons[exception.closeReason as keyof typeof say.reasons] ?? '') : say.closed[exception.closedHow ?? 'backInLimits']} /> : null}
      {phase === 'closed' ? null : <PairCards plan={plan} of={[check.id]} />}
      {phase === 'toCorrect' ? (
        <>
          {found[0]?.holdNow && !isHeld ? (
            <Banner kind="stop" title={say.holdAdvised}>
              <Button wide onPress={() => setOpen('hold')}>{words.now.machine.hold}</Button>
            </Banner>
          ) : null}
          <Remedies exception={exception} found={found} plan={plan} />
          {station.bath ? <LinkButton wide href={`/exception/${exception.id}/own`}>{say.own}</LinkButton> : null}
        </>
      ) : null}
      {phase === 'toConfirm' ? null : <History exception={exception} check={check} plan={plan} />}
      {phase === 'closed' ? null : (
        <div class="aside-actions">
          {isHeld ? null : <Button onPress={() => setOpen('hold')}>{words.now.machine.hold}</Button>}
          <Button onPress={() => setOpen('close')}>{say.close}</Button>
        </div>
      )}
      {open === 'hold' ? <AskHold machine={machine} plan={plan} exception={exception.id} onDone={() => setOpen(undefined)} /> : null}
      {open === 'close' ? <CloseSheet exception={exception} onDone={() => setOpen(undefined)} /> : null}
    </Screen>
  )
}
