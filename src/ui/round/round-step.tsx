import { useState } from 'preact/hooks'
import type { LabPlan } from '../../plan/lab-plan.ts'
import type { Round } from '../../rounds/kept-round.ts'
import { answer, goTo, isFinished, key, scan, settle, takeBack } from '../../rounds/round.ts'
import { useApp, useWords } from '../app-context.ts'
import { Button } from '../parts/button.tsx'
import { Screen } from '../screen.tsx'
import { CheckFlow } from './check-flow.tsx'
import type { Half } from './half.ts'
import { RoundSummary } from './round-summary.tsx'

/** The step at hand. After saving, the round has moved on already; what was saved stays in sight until one goes on. */
export const RoundStep = ({ round, plan }: { round: Round; plan: LabPlan }) => {
  const { rounds, phone } = useApp()
  const words = useWords()
  const [shown, setShown] = useState(round.at)
  const [atSummary, setAtSummary] = useState(isFinished(round))
  if (atSummary) return <RoundSummary round={round} plan={plan} />

  const step = round.steps[shown]!
  const check = plan.checks.find(({ id }) => id === step.check)
  const goOn = (): void => {
    const current = rounds.round.value
    if (!current || isFinished(current)) setAtSummary(true)
    else setShown(current.at)
  }
  const keep = (next: Round): void => void rounds.setRound(next)
  if (!check) return <Screen title={words.round.title} next={<Button kind="go" onPress={goOn}>{words.round.goOn}</Button>} />
  const half: Half = {
    keyed: round.keyed,
    stationSince: round.stationSince,
    atTank: round.atTank,
    ...(round.settling === undefined ? {} : { settling: round.settling }),
  }
  const onHalf = (next: Half): void => {
    let it = key(round, next.keyed)
    if (next.settling !== undefined && next.settling !== round.settling) it = settle(it, next.settling)
    keep(next.atTank && !round.atTank ? scan(it) : it)
  }
  const following = round.steps.findIndex((it, index) => index !== shown && !it.outcome)
  const nextCheck = plan.checks.find(({ id }) => id === round.steps[round.at]?.check)
  return (
    <CheckFlow
      key={`${shown} ${check.id}`}
      check={check}
      half={half}
      due={step.due}
      meta={words.round.step(shown + 1, round.steps.length)}
      round={round.id}
      onHalf={onHalf}
      onAnswered={(how, id) => {
        const moved = answer(rounds.round.value ?? round, how, id, phone.clock.now())
        keep(moved)
        if (how === 'skipped') {
          if (isFinished(moved)) setAtSummary(true)
          else setShown(moved.at)
        }
      }}
      onUndone={(id, keyed) => keep(key(takeBack(rounds.round.value ?? round, id, phone.clock.now()), keyed))}
      onNoted={() => {
        if (following < 0) return
        const after = round.steps.findIndex((it, index) => index > shown && !it.outcome)
        const at = after < 0 ? following : after
        keep(goTo(round, at, phone.clock.now()))
        setShown(at)
      }}
      next={{ label: isFinished(round) || !nextCheck ? words.round.verdict.finish : words.round.verdict.next(nextCheck.name), go: goOn }}
    />
  )
}
