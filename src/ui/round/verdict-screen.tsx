import { useEffect, useState } from 'preact/hooks'
import type { Check } from '../../plan/check.ts'
import { placeOf } from '../../plan/find.ts'
import { useApp, useWords } from '../app-context.ts'
import { useCountdown } from '../countdown.ts'
import { decimalsOf, numberText } from '../format.ts'
import { AskHold } from '../now/hold-card.tsx'
import { PairCards } from '../now/pair-cards.tsx'
import { Banner } from '../parts/banner.tsx'
import { BathGauge } from '../parts/bath-gauge.tsx'
import { Button, LinkButton } from '../parts/button.tsx'
import { Spark } from '../parts/spark.tsx'
import { VerdictMark } from '../parts/verdict-mark.tsx'
import { SavingProblem } from '../saving-problem.tsx'
import { Screen } from '../screen.tsx'
import { StripView } from '../strip/strip-view.tsx'
import type { Answering, Saved } from './answering.ts'
import type { NextStep } from './flow.ts'
import { outcomeOf, type Outcome } from './outcome.ts'

const undoMilliseconds = 12_000
const sparkReadings = 12

interface VerdictScreenProps {
  check: Check
  saved: Saved
  answering: Answering
  meta: string
  /** Where one goes on. */
  next: NextStep
}

/** After the durable write: the verdict, the reading before, the short trend, and what it asks for. */
export const VerdictScreen = ({ check, saved, answering, meta, next }: VerdictScreenProps) => {
  const { lab, plan, phone, router } = useApp()
  const words = useWords()
  const say = words.round.verdict
  useEffect(() => scrollTo(0, 0), [saved.id])
  const [savedAt] = useState(() => phone.clock.now())
  const undoLeft = useCountdown(savedAt + undoMilliseconds)
  const [holding, setHolding] = useState(false)
  const inForce = plan.value!.plan
  const outcome = outcomeOf(lab.value.state, check, saved, phone)
  const exception = 'exception' in outcome ? outcome.exception : undefined
  const correctEarly = async (): Promise<void> => {
    const noted = await answering.saving.save('note', { text: say.warnNote, about: 'general', exception: saved.id })
    if (noted) router.go(`/exception/${saved.id}`)
  }
  const goOn = <Button kind={goesOn(outcome) ? 'go' : undefined} wide onPress={next.go}>{goesOn(outcome) ? next.label : (next.later ?? next.label)}</Button>
  return (
    <Screen
      title={check.name}
      back
      meta={meta}
      next={
        <>
          {outcome.code === 'confirm' ? <Button kind="go" onPress={answering.again}>{check.kind === 'strip' ? words.strip.second.key : say.readAgain}</Button> : null}
          {outcome.code === 'onceMore' ? <Button kind="go" onPress={answering.again}>{say.readAgain}</Button> : null}
          {outcome.code === 'holdNow' ? <Button kind="go" onPress={() => setHolding(true)}>{words.now.machine.hold}</Button> : null}
          {exception && outcome.code !== 'confirm' && outcome.code !== 'onceMore' ? (
            <LinkButton kind={outcome.code === 'holdNow' ? undefined : 'go'} wide href={`/exception/${exception.id}`}>{say.toException}</LinkButton>
          ) : null}
          {outcome.code === 'warn' ? <Button wide onPress={() => void correctEarly()}>{say.warnAnswer}</Button> : null}
          {goOn}
        </>
      }
    >
      <div class="saved" role="status">
        <span>{words.saving.saved}</span>
        {undoLeft > 0 ? <Button onPress={() => void answering.undo()}>{`${words.saving.undo} · ${Math.ceil(undoLeft / 1000)}`}</Button> : null}
      </div>
      <SavingProblem of={answering.saving} />
      {check.kind === 'reading' && saved.value !== undefined ? <ReadingResult check={check} saved={saved} value={saved.value} /> : null}
      {check.kind === 'look' ? <p class="verdict-line"><VerdictMark verdict={saved.verdict} /> <strong>{saved.verdict === 'IN' ? check.right : check.wrong}</strong></p> : null}
      <OutcomeBanner outcome={outcome} isStrip={check.kind === 'strip'} />
      {check.kind === 'strip' ? <StripResult check={check} saved={saved} /> : null}
      <PairCards plan={inForce} of={[check.id]} />
      {holding && exception ? <AskHold machine={placeOf(inForce, check.station).machine} plan={inForce} exception={exception.id} onDone={() => setHolding(false)} /> : null}
    </Screen>
  )
}

const goesOn = ({ code }: Outcome): boolean => code === 'in' || code === 'warn' || code === 'refuted' || code === 'closed'

const ReadingResult = ({ check, saved, value }: { check: Extract<Check, { kind: 'reading' }>; saved: Saved; value: number }) => {
  const { phone } = useApp()
  const words = useWords()
  const say = words.round.verdict
  const decimals = decimalsOf(check.step)
  const off = value - check.limits.aim
  const offText = numberText(Math.abs(off), decimals)
  const last = saved.before.findLast((mark) => mark.value !== undefined)
  const values = [...saved.before.flatMap((mark) => (mark.value === undefined ? [] : [mark.value])), value].slice(-sparkReadings)
  return (
    <div class="reading after">
      <BathGauge limits={check.limits} value={value} name={words.round.check.gauge(check.name, `${saved.keyed ?? ''} ${check.unit}`)} />
      <div class="number">
        <output class="keyed">{saved.keyed}</output>
        <p>{check.unit === '1' ? '' : check.unit} <span class="quiet">{words.round.check.aim(numberText(check.limits.aim, decimals))}</span></p>
        <p class="verdict-line">
          <VerdictMark verdict={saved.verdict} /> {Number(offText) === 0 ? say.onAim : off > 0 ? say.above(offText) : say.below(offText)}
        </p>
        <p class="quiet">
          {last?.value === undefined ? say.first : say.last(last.keyed ?? numberText(last.value, decimals), words.time.ago(words.time.span(phone.clock.now() - last.time)))}
        </p>
        {values.length > 2 ? <Spark values={values} limits={check.limits} name={say.trend(values.length)} /> : null}
      </div>
    </div>
  )
}

const StripResult = ({ check, saved }: { check: Extract<Check, { kind: 'strip' }>; saved: Saved }) => {
  const { lab } = useApp()
  const line = lab.value.ledger.line(saved.id)
  return (
    <>
      <p class="verdict-line"><VerdictMark verdict={saved.verdict} /></p>
      {line?.kind === 'strip' ? <StripView check={check} line={line} /> : null}
    </>
  )
}

const OutcomeBanner = ({ outcome, isStrip }: { outcome: Outcome; isStrip: boolean }) => {
  const words = useWords()
  const say = words.round.verdict
  switch (outcome.code) {
    case 'in':
      return null
    case 'warn':
      return <Banner kind="warn" title={say.warn} />
    case 'confirm':
      return isStrip ? <Banner kind="stop" title={words.strip.second.title}>{words.strip.second.more}</Banner> : <Banner kind="stop" title={say.confirmTitle}>{say.confirm}</Banner>
    case 'holdNow':
      return <Banner kind="stop" title={say.holdNow} />
    case 'confirmed':
    case 'stillOut':
      return <Banner kind="stop" title={say[outcome.code]} />
    case 'whileMixing':
    case 'onceMore':
      return <Banner kind="warn" title={say[outcome.code]} />
    case 'refuted':
    case 'closed':
      return <Banner title={say[outcome.code]} />
  }
}
