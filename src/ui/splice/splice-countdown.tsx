import { useEffect, useRef, useState } from 'preact/hooks'
import type { Machine } from '../../plan/machine.ts'
import { secondsLeft, spliceSeconds, spliceState, type SpliceState } from '../../rounds/splice.ts'
import { windowOf, type SpliceHeld } from '../../rounds/splice-held.ts'
import { useApp, useWords } from '../app-context.ts'
import { buzz } from '../buzz.ts'
import { clocksOf } from '../clocks-of.ts'
import { Button } from '../parts/button.tsx'
import { clockText } from '../parts/timer-ring.tsx'
import { SavingProblem } from '../saving-problem.tsx'
import { useSaving } from '../saving.ts'
import { Screen } from '../screen.tsx'
import { useWakeLock } from '../wake-lock.ts'

const tickMilliseconds = 100

/** `unknown`: after a restart with a clock set back. */
type Shown = SpliceState | 'unknown'

/** What is left, as large as the screen allows; each threshold is felt, and each of the last seconds. */
export const SpliceCountdown = ({ machine, held, onReleased }: { machine: Machine; held: SpliceHeld; onReleased(): void }) => {
  const { phone, person } = useApp()
  const words = useWords()
  const say = words.splice
  const saving = useSaving()
  const [, redraw] = useState(0)
  const [noted, setNoted] = useState(false)
  useWakeLock(true)
  useEffect(() => {
    const timer = setInterval(() => redraw((count) => count + 1), tickMilliseconds)
    return () => clearInterval(timer)
  }, [])
  const at = windowOf(held, clocksOf(phone))
  const left = at ? secondsLeft(at.window, at.now) : undefined
  const state: Shown = at ? spliceState(at.window, at.now) : 'unknown'
  const whole = spliceSeconds(held)
  // Down, so that the figure never promises more than there is; past nought, up.
  const shown = left === undefined ? '–' : left > 0 ? clockText(Math.floor(left)) : `−${clockText(Math.floor(-left))}`
  useFelt(state, left)
  const isOver = state === 'empty' || state === 'unknown'
  const note = async (): Promise<void> => {
    if (await saving.save('note', { text: say.incident, about: 'incident', machine: machine.id })) setNoted(true)
  }
  return (
    <Screen title={say.title} meta={machine.name} back fills next={<Button kind="go" onPress={onReleased}>{isOver ? say.over : say.released}</Button>}>
      <div class={`splice running ${state}`}>
        <p class="left" role="timer" aria-label={say.window}>{shown}</p>
        <div class="share" aria-hidden="true"><span style={{ '--left': String(Math.max(0, Math.min(1, (left ?? 0) / whole))) }} /></div>
        <p class="says" role={isOver ? 'alert' : 'status'}>{say.states[state]}</p>
      </div>
      <SavingProblem of={saving} />
      {isOver && person.value !== null ? noted ? <p role="status">{words.saving.saved}</p> : <Button wide onPress={() => note()}>{say.writeDown}</Button> : null}
    </Screen>
  )
}

/** A threshold once, and from ten seconds down each second. */
const useFelt = (state: Shown, left: number | undefined): void => {
  const before = useRef(state)
  const second = useRef(Number.POSITIVE_INFINITY)
  useEffect(() => {
    if (before.current !== state) {
      before.current = state
      if (state === 'hurry') buzz('warn')
      else if (state === 'lastSeconds') buzz('act')
      else if (state === 'empty') buzz('timerDone')
      return
    }
    const whole = Math.floor(left ?? 0)
    if (state === 'lastSeconds' && whole < second.current) buzz('second')
    second.current = whole
  })
}
