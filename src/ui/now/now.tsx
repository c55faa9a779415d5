import { useMemo } from 'preact/hooks'
import { shiftAt } from '../../plan/shift-time.ts'
import type { LabPlan } from '../../plan/lab-plan.ts'
import { useApp, useWords } from '../app-context.ts'
import { timeText } from '../format.ts'
import { lazy } from '../lazy.tsx'
import { seenAt } from '../mixing-seen.ts'
import { Banner, Empty } from '../parts/banner.tsx'
import { Button, LinkButton } from '../parts/button.tsx'
import { Screen } from '../screen.tsx'
import { SendingProblem } from '../sending-problem.tsx'
import { MachineCard } from './machine-card.tsx'
import { nextThing } from './next-thing.ts'
import { everyMilliseconds } from './use-due.ts'

const Nothing = () => null
/** It is seldom there, and not what the first screen waits for. */
const LeftBehindCard = lazy<{ plan: LabPlan }>(() => import('./left-behind-card.tsx').then((it) => it.LeftBehindCard, () => Nothing), Nothing)

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
  const { lab, rounds, now, phone } = useApp()
  const words = useWords()
  const tick = Math.floor(now.value / everyMilliseconds)
  const next = useMemo(() => nextThing(lab.value.state, plan, rounds.round.value, now.value, words, (exception) => seenAt(phone, exception)), [lab.value, plan, rounds.round.value, tick, words])
  const shift = useMemo(() => shiftAt(plan, now.value).shift.name, [plan, tick])
  return (
    <Screen
      title={words.now.title}
      meta={`${timeText(now.value, plan.timeZone)} · ${shift}`}
      next={
        <div class="next-and-scan">
          {next.href ? <LinkButton kind="go" href={next.href}>{next.label}</LinkButton> : <p class="wait">{next.label}</p>}
          <LinkButton href="/scan">{words.now.scan}</LinkButton>
        </div>
      }
    >
      <SendingProblem lastingOnly />
      <Unsent />
      <Update />
      <LeftBehindCard plan={plan} />
      <div class="now-machines">{plan.machines.map((machine) => <MachineCard key={machine.id} machine={machine} plan={plan} />)}</div>
    </Screen>
  )
}

/** What has waited too long on this phone, said loudly here; on the other screens it is framed in the head. */
const Unsent = () => {
  const { sending, now, phone } = useApp()
  const words = useWords()
  const { waiting, oldestAt, concern } = sending.value
  if (concern === 'none' || oldestAt === undefined) return null
  const span = words.time.span(now.value - oldestAt)
  const { unsent } = words.shell
  return (
    <Banner kind={concern === 'alarm' ? 'stop' : 'warn'} title={concern === 'alarm' ? unsent.alarm(waiting, span) : unsent.warning(waiting, span)}>
      <p>{concern === 'alarm' ? unsent.alarmMore : unsent.warningMore}</p>
      <Button wide onPress={() => phone.sendNow()}>{unsent.send}</Button>
    </Banner>
  )
}

/** A new version is offered here alone, and never while a round is open. */
const Update = () => {
  const { update, rounds } = useApp()
  const words = useWords().shell.update
  const waiting = update.value
  if (!waiting || rounds.round.value) return null
  return (
    <Banner title={words.title}>
      <p>{words.more}</p>
      <Button wide onPress={() => waiting.apply()}>{words.now}</Button>
    </Banner>
  )
}
