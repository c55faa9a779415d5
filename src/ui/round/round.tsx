import { useEffect } from 'preact/hooks'
import { machineOf } from '../../plan/find.ts'
import type { LabPlan } from '../../plan/lab-plan.ts'
import { doneCount, type Round as OpenRound } from '../../rounds/kept-round.ts'
import { fittedTo, goTo, isFinished, startRound } from '../../rounds/round.ts'
import { nextDueAt, walkAt, walks, type Walk } from '../../rounds/walk.ts'
import { useApp, useWords } from '../app-context.ts'
import { timeText } from '../format.ts'
import { dueText } from '../now/due-text.ts'
import { Empty } from '../parts/banner.tsx'
import { LinkButton } from '../parts/button.tsx'
import { CallMe } from '../parts/call-me.tsx'
import { Card, Row, Rows } from '../parts/card.tsx'
import { Screen } from '../screen.tsx'
import { EndRound } from './end-round.tsx'
import { reconciled } from './reconciled.ts'
import { RoundStep } from './round-step.tsx'
import { RoundSummary } from './round-summary.tsx'

/** The round: `/round` shows what there is to walk, `/round/<machine>` walks it, one check a screen. */
export const Round = () => {
  const { plan, router, rounds, phone } = useApp()
  const words = useWords()
  const inForce = plan.value?.plan
  const open = rounds.round.value
  // A revision may have taken away what the open round still had to walk; what was read is in the log.
  const fitted = open && inForce ? fittedTo(open, inForce, phone.clock.now()) : open
  useEffect(() => {
    if (fitted !== open) void rounds.setRound(fitted)
  })
  if (fitted !== open) return <Screen title={words.round.title} />
  if (!inForce) return <Screen title={words.round.title}><Empty title={words.now.noPlan.title}>{words.now.noPlan.more}</Empty></Screen>
  const machine = inForce.machines.find(({ id }) => id === router.here.value.rest[0])
  return machine ? <WalkedRound plan={inForce} machine={machine} /> : <Walks plan={inForce} />
}

const WalkedRound = ({ plan, machine }: { plan: LabPlan; machine: LabPlan['machines'][number] }) => {
  const { rounds, lab, phone } = useApp()
  const words = useWords()
  const open = rounds.round.value
  useEffect(() => {
    if (open) {
      const known = reconciled(open, lab.value.ledger, phone.clock.now())
      if (known !== open) void rounds.setRound(known)
      return
    }
    const walk = walkAt(lab.value.state, plan, machine, phone.clock.now())
    if (walk) void rounds.setRound(startRound(walk, phone.newId(), phone.clock.now()))
  }, [])
  if (open && open.machine !== machine.id) {
    return (
      <Screen title={words.round.title} back next={<LinkButton kind="go" href={`/round/${open.machine}`}>{words.round.goOn}</LinkButton>}>
        <Empty title={words.round.other(machineOf(plan, open.machine).name)} />
      </Screen>
    )
  }
  if (!open) return <NothingDue plan={plan} />
  return <RoundStep key={open.id} round={open} plan={plan} />
}

const Walks = ({ plan }: { plan: LabPlan }) => {
  const { rounds, lab, now } = useApp()
  const open = rounds.round.value
  if (open) return <Overview round={open} plan={plan} />
  const due = walks(lab.value.state, plan, now.value)
  return due.length ? <Startable walks={due} plan={plan} /> : <NothingDue plan={plan} />
}

const Startable = ({ walks: due, plan }: { walks: readonly Walk[]; plan: LabPlan }) => {
  const { now } = useApp()
  const words = useWords()
  return (
    <Screen title={words.round.title}>
      {due.map((walk) => (
        <Card key={walk.machine.id} title={walk.machine.name} beside={words.round.name(timeText(walk.dueAt, plan.timeZone))}>
          <LinkButton kind="go" href={`/round/${walk.machine.id}`}>{words.round.start(walk.checks.length)}</LinkButton>
          <Rows>
            {walk.checks.map((it) => (
              <Row key={it.check.id} what={it.check.name} value={<span class={`due ${it.status}`}>{dueText(it, now.value, words)}</span>} />
            ))}
          </Rows>
        </Card>
      ))}
    </Screen>
  )
}

const NothingDue = ({ plan }: { plan: LabPlan }) => {
  const { lab, now } = useApp()
  const words = useWords()
  const next = nextDueAt(lab.value.state, plan, now.value)
  return (
    <Screen title={words.round.title}>
      <Empty title={words.round.nothing.title}>{next === undefined ? words.round.nothing.none : words.round.nothing.more(timeText(next, plan.timeZone))}</Empty>
      <CallMe />
    </Screen>
  )
}

const Overview = ({ round, plan }: { round: OpenRound; plan: LabPlan }) => {
  const { rounds, router, phone } = useApp()
  const words = useWords()
  if (isFinished(round)) return <RoundSummary round={round} plan={plan} />
  const walk = (at: number): void => {
    void rounds.setRound(goTo(round, at, phone.clock.now()))
    router.go(`/round/${round.machine}`)
  }
  return (
    <Screen
      title={words.round.name(timeText(round.dueAt, plan.timeZone))}
      meta={words.now.round.goOn(doneCount(round), round.steps.length)}
      next={<LinkButton kind="go" href={`/round/${round.machine}`}>{words.now.round.goOn(doneCount(round), round.steps.length)}</LinkButton>}
    >
      <Card title={machineOf(plan, round.machine).name}>
        <Rows label={words.round.steps}>
          {round.steps.map((step, at) => {
            const check = plan.checks.find(({ id }) => id === step.check)
            const state = step.outcome ? (step.outcome.kind === 'done' ? words.round.state.done : words.round.state.skipped) : at === round.at ? words.round.state.here : words.round.state.open
            const name = check?.name ?? step.check
            return step.outcome ? <Row key={step.check} what={name} value={<span class="quiet">{state}</span>} /> : <Row key={step.check} what={<strong>{name}</strong>} value={state} onPress={() => walk(at)} />
          })}
        </Rows>
      </Card>
      <EndRound />
    </Screen>
  )
}
