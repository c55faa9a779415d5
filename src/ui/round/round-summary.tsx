import { machineOf, placeOf } from '../../plan/find.ts'
import type { LabPlan } from '../../plan/lab-plan.ts'
import { answerableExceptions } from '../../projections/left-behind.ts'
import { visitsOf } from '../../projections/visits.ts'
import type { Round } from '../../rounds/kept-round.ts'
import { useApp, useWords } from '../app-context.ts'
import { timeText } from '../format.ts'
import { InstallOffer } from '../menu/install-card.tsx'
import { ExceptionRow } from '../now/exception-row.tsx'
import { Button } from '../parts/button.tsx'
import { Card, Row, Rows } from '../parts/card.tsx'
import { Screen } from '../screen.tsx'

/** What the round has found: how much was done, what was not and why, what is out. */
export const RoundSummary = ({ round, plan }: { round: Round; plan: LabPlan }) => {
  const { lab, rounds, router } = useApp()
  const words = useWords()
  const say = words.round.finished
  const skipped = round.steps.filter(({ outcome }) => outcome?.kind === 'skipped')
  const out = answerableExceptions(lab.value.state, plan).filter((it) => round.steps.some(({ check }) => check === it.check))
  const done = round.steps.length - skipped.length
  const visits = visitsOf(lab.value.ledger.lines.slice(lab.value.ledger.indexAt(round.startedAt)), plan, round.id)
  const close = (): void => {
    void rounds.setRound(undefined)
    router.go('/now')
  }
  return (
    <Screen title={say.title} meta={words.round.name(timeText(round.dueAt, plan.timeZone))} next={<Button kind="go" onPress={close}>{say.close}</Button>}>
      <Card title={machineOf(plan, round.machine).name} beside={say.done(done, round.steps.length)}>
        {out.length ? (
          <>
            <h3>{say.out}</h3>
            <Rows>{out.map((it) => <ExceptionRow key={it.id} exception={it} plan={plan} />)}</Rows>
          </>
        ) : (
          <p>{say.allIn}</p>
        )}
        {skipped.length ? (
          <>
            <h3>{say.skipped}</h3>
            <Rows>
              {skipped.map((step) => {
                const line = step.outcome && lab.value.ledger.line(step.outcome.entry)
                return (
                  <Row
                    key={step.check}
                    what={plan.checks.find(({ id }) => id === step.check)?.name ?? step.check}
                    under={line?.kind === 'skip' ? words.round.skip.reasons[line.data.reason] : undefined}
                  />
                )
              })}
            </Rows>
          </>
        ) : null}
      </Card>
      {visits.length ? (
        <Card title={say.visits}>
          <Rows>
            {visits.map((visit) => (
              <Row key={visit.station} what={placeOf(plan, visit.station).station.name} under={visit.atTank ? say.atTank(visit.atTank, visit.checks) : say.notAtTank} value={words.time.span(visit.seconds * 1000)} />
            ))}
          </Rows>
        </Card>
      ) : null}
      <InstallOffer />
    </Screen>
  )
}
