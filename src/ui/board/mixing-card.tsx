import { useMemo } from 'preact/hooks'
import type { LabPlan } from '../../plan/lab-plan.ts'
import { readingPlan } from '../../projections/reading-plan.ts'
import { walkDown, type WalkItem } from '../../projections/walk-down.ts'
import { useApp, useWords } from '../app-context.ts'
import { Card, Row, Rows } from '../parts/card.tsx'
import { walkRows } from '../shift/walk-rows.ts'

const isMixing = (item: WalkItem): boolean => item.what === 'mixing' || item.what === 'batch' || (item.what === 'exception' && item.phase === 'mixing')

/** Every bath that is mixing, with the time that is left of it. */
export const MixingCard = ({ plan }: { plan: LabPlan }) => {
  const { lab, now } = useApp()
  const words = useWords()
  const tick = Math.floor(now.value / 5_000)
  const items = useMemo(() => walkDown(lab.value.log, plan, now.value).filter(isMixing), [lab.value, plan, tick])
  const rows = walkRows(items, { plan: readingPlan(lab.value.state.plans, plan), state: lab.value.state, ledger: lab.value.ledger, now: now.value, words })
  return (
    <Card title={words.board.mixing}>
      {rows.length ? <Rows>{rows.map(({ key, what, under, href }) => <Row key={key} what={what} under={under} href={href} />)}</Rows> : <p class="quiet">{words.board.mixingNone}</p>}
    </Card>
  )
}
