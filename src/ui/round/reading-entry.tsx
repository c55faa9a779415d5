import { useState } from 'preact/hooks'
import type { ReadingCheck } from '../../plan/check.ts'
import { parseKeyed, type KeyedProblem } from '../../rounds/keyed.ts'
import { secondLook, type SecondLook } from '../../rounds/second-look.ts'
import { secondsToWait, type Clocks, type Timer } from '../../rounds/timer.ts'
import { useApp, useWords } from '../app-context.ts'
import { buzz } from '../buzz.ts'
import { clocksOf } from '../clocks-of.ts'
import { MarkedNumber } from '../camera/marked-number.tsx'
import { asKeyed, shifted } from '../camera/read.ts'
import { ReadLine } from '../camera/read-line.tsx'
import { useRead } from '../camera/use-read.ts'
import { decimalsOf, numberText } from '../format.ts'
import { CameraSheet } from '../camera/camera-sheet.tsx'
import { BathGauge } from '../parts/bath-gauge.tsx'
import { Button } from '../parts/button.tsx'
import { CameraIcon } from '../parts/icons.tsx'
import { NumberPad } from '../parts/number-pad.tsx'
import { SavingProblem } from '../saving-problem.tsx'
import { Screen } from '../screen.tsx'
import { EntryTools } from './entry-tools.tsx'
import type { FlowProps } from './flow.ts'
import { SecondLookSheet } from './second-look-sheet.tsx'
import { Settle } from './settle.tsx'
import { Where } from './where.tsx'

interface Doubt {
  value: number
  keyed: string
  far?: SecondLook
  /** Seconds settled so far, where that is too short. */
  settledFor?: number
}

/** One number off one instrument: what, where and how above, the pad under the thumb. Nothing is judged before it is saved. */
export const ReadingEntry = ({ check, half, asked, answering, meta, due, onHalf, onNoted }: FlowProps<ReadingCheck>) => {
  const { lab, phone, rounds } = useApp()
  const words = useWords()
  const [problem, setProblem] = useState<KeyedProblem>()
  const [doubt, setDoubt] = useState<Doubt>()
  const decimals = decimalsOf(check.step)
  const unit = check.unit === '1' ? '' : check.unit
  const text = (value: number): string => numberText(value, decimals)

  const { read, take } = useRead(check.id, half.keyed === '')
  const [isReading, setReading] = useState(false)
  // The phone stays dark near open film, and what was noted on paper stands on no display any more.
  const mayRead = !check.darkWork && rounds.noted.value[check.id] === undefined

  const keep = (given: { value: number; keyed: string; secondLook: boolean }): void => void answering.reading(check, { ...given, ...(read ? { read } : {}) })
  const save = (): void => {
    const parsed = parseKeyed(half.keyed, { decimals, low: check.instrument.low, high: check.instrument.high })
    if (!parsed.ok) {
      setProblem(parsed.problem)
      buzz('refused')
      return
    }
    const { value, keyed } = parsed
    const far = secondLook(check, lab.value.state.checks[check.id], value)
    const settledFor = unsettledFor(check, half.settling, rounds.noted.value[check.id] === undefined, clocksOf(phone))
    if (far || settledFor !== undefined) setDoubt({ value, keyed, ...(far ? { far } : {}), ...(settledFor === undefined ? {} : { settledFor }) })
    else keep({ value, keyed, secondLook: false })
  }
  const change = (keyed: string): void => {
    setProblem(undefined)
    onHalf({ ...half, keyed })
  }
  const { problems } = words.round
  const { limits } = check
  const low = limits.actionLow === undefined ? undefined : text(limits.actionLow)
  const high = limits.actionHigh === undefined ? undefined : text(limits.actionHigh)
  return (
    <Screen title={check.name} back meta={meta} fills next={<Button kind="go" onPress={save}>{words.round.check.save}</Button>}>
      <Where check={check} asked={asked} />
      <SavingProblem of={answering.saving} />
      <div class="reading">
        <BathGauge limits={limits} name={words.round.check.gauge(check.name, undefined)} />
        <div class="number">
          <div class="keyed-row">
            <output class={`keyed${half.keyed.length > 5 ? ' long' : ''}`} aria-live="polite">
              {half.keyed === '' ? <span class="cursor" role="img" aria-label={words.round.check.empty} /> : read && half.keyed === asKeyed(read.text) ? <MarkedNumber text={half.keyed} doubtful={shifted(read)} /> : half.keyed}
            </output>
            {mayRead ? <button type="button" class="read-button" aria-label={words.camera.openName} onClick={() => setReading(true)}><CameraIcon />{words.camera.open}</button> : null}
          </div>
          {read ? <ReadLine read={read} keyed={half.keyed} /> : null}
          <p>{unit} <span class="quiet">{words.round.check.aim(text(limits.aim))}</span></p>
          <p class="small quiet">{words.round.check.limits(low, high)}</p>
          {check.settleSeconds ? (
            <Settle seconds={check.settleSeconds} timer={half.settling} onStart={(settling) => onHalf({ ...half, settling })} />
          ) : null}
        </div>
      </div>
      {problem ? <p class="problem" role="alert">{problems[problem.code](problem as never)}</p> : null}
      <NumberPad value={half.keyed} onChange={change} onEnter={save} decimals={decimals} minus={check.instrument.low < 0} names={words.pad} />
      <EntryTools check={check} due={due} answering={answering} half={half} onHalf={onHalf} onNoted={onNoted} />
      {isReading ? (
        <CameraSheet
          check={check}
          onClose={() => setReading(false)}
          onRead={(it) => {
            setReading(false)
            take(it)
            change(asKeyed(it.text))
          }}
        />
      ) : null}
      {doubt ? (
        <SecondLookSheet
          check={check}
          keyed={doubt.keyed}
          far={doubt.far}
          settledFor={doubt.settledFor}
          onAgain={() => { setDoubt(undefined); change('') }}
          onWait={() => setDoubt(undefined)}
          onKeep={() => { setDoubt(undefined); keep({ value: doubt.value, keyed: doubt.keyed, secondLook: doubt.far !== undefined }) }}
        />
      ) : null}
    </Screen>
  )
}

/** Seconds settled where that is too short; a value noted on paper was settled then. */
const unsettledFor = ({ settleSeconds }: ReadingCheck, settling: Timer | undefined, here: boolean, now: Clocks): number | undefined => {
  if (!settleSeconds || !here) return undefined
  const left = settling === undefined ? settleSeconds : secondsToWait(settling, now)
  return left > 0 ? Math.floor(settleSeconds - left) : undefined
}
