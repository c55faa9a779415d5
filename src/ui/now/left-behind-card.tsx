import type { LabPlan } from '../../plan/lab-plan.ts'
import { leftBehind } from '../../projections/left-behind.ts'
import { readingPlan } from '../../projections/reading-plan.ts'
import { useApp, useWords } from '../app-context.ts'
import { Card, Row, Rows } from '../parts/card.tsx'
import { ExceptionRow } from './exception-row.tsx'

/** What is still open on something that is no longer in the plan, so that it is not forgotten with it. */
export const LeftBehindCard = ({ plan }: { plan: LabPlan }) => {
  const { lab } = useApp()
  const words = useWords().now
  const { state } = lab.value
  const { exceptions, holds } = leftBehind(state, plan)
  if (!exceptions.length && !holds.length) return null
  const known = readingPlan(state.plans, plan)
  const machineName = (id: string): string => known.machines.find((it) => it.id === id)?.name ?? id
  return (
    <Card title={words.leftBehind.title}>
      <Rows>
        {holds.map((hold) => <Row key={hold.id} href={`/machine/${hold.machine}`} what={<strong>{words.leftBehind.held(machineName(hold.machine))}</strong>} under={hold.reason} />)}
        {exceptions.map((exception) => <ExceptionRow key={exception.id} exception={exception} plan={known} />)}
      </Rows>
    </Card>
  )
}
