import { useState } from 'preact/hooks'
import type { MachineState } from '../../plan/schedule.ts'
import { spanAt } from '../../projections/machines.ts'
import { leftBehind } from '../../projections/left-behind.ts'
import { readingPlan } from '../../projections/reading-plan.ts'
import { useApp, useWords } from '../app-context.ts'
import { buzz } from '../buzz.ts'
import { timeText } from '../format.ts'
import { NotFound } from '../not-found.tsx'
import { Banner } from '../parts/banner.tsx'
import { Button, LinkButton } from '../parts/button.tsx'
import { NumberPad } from '../parts/number-pad.tsx'
import { SavingProblem } from '../saving-problem.tsx'
import { useSaving } from '../saving.ts'
import { Screen } from '../screen.tsx'
import { lengthIn, metresOf, shortText, speedText } from '../units.ts'
import { HoldCard } from './hold-card.tsx'
import './machine-screen.css'

/** Film moves in these; the speed then belongs to the entry. */
const moving: ReadonlySet<MachineState> = new Set(['startUp', 'running', 'changeOver', 'shutDown'])

/** What a machine is doing, how fast, and whether it is held. */
export const MachineScreen = () => {
  const { lab, plan, now, phone, router } = useApp()
  const words = useWords()
  const saving = useSaving()
  const id = router.here.value.rest[0]
  const inForce = plan.value?.plan
  const machine = inForce?.machines.find((it) => it.id === id)
  const span = spanAt(machine && lab.value.state.machines[machine.id], now.value)
  const [chosen, setChosen] = useState<MachineState>()
  const [speed, setSpeed] = useState<string>()
  const [problem, setProblem] = useState<string>()
  if (!inForce || !machine) {
    const held = inForce && leftBehind(lab.value.state, inForce).holds.some((hold) => hold.machine === id) ? readingPlan(lab.value.state.plans, inForce).machines.find((it) => it.id === id) : undefined
    if (!inForce || !held) return <NotFound back />
    return (
      <Screen title={held.name} back>
        <Banner kind="warn" title={words.now.leftBehind.machine} />
        <HoldCard machine={held} plan={inForce} />
      </Screen>
    )
  }

  const unit = inForce.units.length
  const state = chosen ?? span.state
  const usual = span.metresPerMinute > 0 && state === span.state ? span.metresPerMinute : machine.aimMetresPerMinute
  const keyed = speed ?? shortText(lengthIn(usual, unit), 1)
  const save = async (): Promise<void> => {
    const number = Number(keyed.replace(',', '.'))
    if (moving.has(state) && !(number >= 0 && keyed.trim() !== '')) {
      setProblem(words.now.machine.badSpeed)
      return
    }
    const metresPerMinute = speed === undefined ? usual : metresOf(number, unit)
    const saved = await saving.save('run', { machine: machine.id, state, ...(moving.has(state) ? { metresPerMinute: Number(metresPerMinute.toFixed(4)) } : {}) })
    if (!saved) return
    buzz('saved')
    router.back()
  }
  return (
    <Screen
      title={machine.name}
      back
      meta={timeText(phone.clock.now(), inForce.timeZone)}
      next={<Button kind="go" onPress={() => save()}>{words.now.machine.saveState(words.marks.machine[state], moving.has(state) ? `${keyed} ${unit}/min` : undefined)}</Button>}
    >
      <SavingProblem of={saving} />
      <div class="states" role="radiogroup" aria-label={words.now.machine.state}>
        {words.now.states.map((it) => (
          <button key={it} type="button" role="radio" aria-checked={it === state} onClick={() => { setChosen(it); setSpeed(undefined) }}>
            {words.marks.machine[it]}
          </button>
        ))}
      </div>
      {moving.has(state) ? (
        <div class="stack">
          <p class="speed" aria-live="polite">
            <strong>{keyed || '–'}</strong> {unit}/min <span class="small quiet">{words.now.machine.aim(speedText(machine.aimMetresPerMinute, unit))}</span>
          </p>
          {problem ? <p class="problem" role="alert">{problem}</p> : null}
          {speed === undefined ? (
            <Button wide onPress={() => setSpeed('')}>{words.now.machine.otherSpeed}</Button>
          ) : (
            <NumberPad value={speed} onChange={(value) => { setSpeed(value); setProblem(undefined) }} onEnter={() => void save()} decimals={1} names={{ ...words.pad, pad: words.now.machine.speed }} />
          )}
        </div>
      ) : null}
      {machine.reserveMetres !== undefined && span.metresPerMinute > 0 ? <LinkButton wide href={`/splice/${machine.id}`}>{words.now.splice}</LinkButton> : null}
      <HoldCard machine={machine} plan={inForce} />
    </Screen>
  )
}
