import { useMemo } from 'preact/hooks'
import { shiftAt } from '../../plan/shift-time.ts'
import type { LabPlan } from '../../plan/lab-plan.ts'
import { leftBehind } from '../../projections/left-behind.ts'
import { useApp, useWords } from '../app-context.ts'
import { timeText } from '../format.ts'
import { lazy } from '../lazy.tsx'
import { seenAt } from '../mixing-seen.ts'
import { Empty } from '../parts/banner.tsx'
import { LinkButton } from '../parts/button.tsx'
import { Screen } from '../screen.tsx'
import { MachineCard } from './machine-card.tsx'
import { nextThing } from './next-thing.ts'
import { everyMilliseconds } from './use-due.ts'

const Nothing = () => null
/** Seldom there, and not what the first screen waits for. Where it cannot be fetched, the machines stand all the same. */
const Notices = lazy<{ plan: LabPlan }>(() => import('./now-notices.tsx').then((it) => it.NowNotices, () => Nothing), Nothing)

/** The laboratory as it stands: each machine, what is out, what is due, and the one thing to do next. */
export const Now = () => {
  const { plan } = useApp()
  const words = useWords()
  if (!plan.value) {
    return (
      <Screen title={words.now.title}>
        <Empty title={words.now.noPlan.title}>{words.now.noPlan.more}</Empty>
      </Screen>
    )
  }
  return <Known plan={plan.value.plan} />
}

const Known = ({ plan }: { plan: LabPlan }) => {
  const { lab, rounds, now, phone, sending, update } = useApp()
  const words = useWords()
  const tick = Math.floor(now.value / everyMilliseconds)
  const next = useMemo(() => nextThing(lab.value.state, plan, rounds.round.value, now.value, words, (exception) => seenAt(phone, exception)), [lab.value, plan, rounds.round.value, tick, words])
  const shift = useMemo(() => shiftAt(plan, now.value).shift.name, [plan, tick])
  const left = leftBehind(lab.value.state, plan)
  const isNoticed = sending.value.concern !== 'none' || sending.value.isLasting || update.value !== undefined || left.exceptions.length + left.holds.length > 0
  return (
    <Screen
      wide
      title={words.now.title}
      meta={`${timeText(now.value, plan.timeZone)} · ${shift}`}
      next={
        <div class="next-and-scan">
          {next.href ? <LinkButton kind="go" href={next.href}>{next.label}</LinkButton> : <p class="wait">{next.label}</p>}
          <LinkButton href="/scan">{words.now.scan}</LinkButton>
        </div>
      }
    >
      {isNoticed ? <Notices plan={plan} /> : null}
      <div class="now-machines">{plan.machines.map((machine) => <MachineCard key={machine.id} machine={machine} plan={plan} />)}</div>
    </Screen>
  )
}
