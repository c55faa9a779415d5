import { useEffect, useMemo, useState } from 'preact/hooks'
import type { ShiftSpan } from '../../plan/shift-time.ts'
import { readingPlan } from '../../projections/reading-plan.ts'
import { walkDown } from '../../projections/walk-down.ts'
import { useApp, useWords } from '../app-context.ts'
import { walkRows, type WalkRow } from './walk-rows.ts'

/** The walk-down as it stands now; the list itself is told anew once in some seconds, its timers run on every second. */
export const useWalk = (): WalkRow[] => {
  const { lab, now, plan: inForce } = useApp()
  const words = useWords()
  const tick = Math.floor(now.value / 5_000)
  const plan = inForce.value?.plan
  const items = useMemo(() => (plan ? walkDown(lab.value.log, plan, now.value) : []), [lab.value, plan, tick])
  return plan ? walkRows(items, { plan: readingPlan(lab.value.state.plans, plan), state: lab.value.state, ledger: lab.value.ledger, now: now.value, words }) : []
}

/** What has been ticked of it; kept beside the record, so that a call or a dead battery costs no second walk. */
export const useTicks = ({ date, shift }: ShiftSpan): { ticked: ReadonlySet<string>; tick(key: string): void; forget(): void } => {
  const { phone } = useApp()
  const [ticked, setTicked] = useState<ReadonlySet<string>>(new Set())
  const name = `walk ${date} ${shift.id}`
  useEffect(() => {
    void phone.drafts.get(name).then((kept) => {
      if (Array.isArray(kept)) setTicked(new Set(kept.filter((it): it is string => typeof it === 'string')))
    })
  }, [name])
  const tick = (key: string): void => {
    const next = new Set(ticked)
    if (!next.delete(key)) next.add(key)
    setTicked(next)
    void phone.drafts.put(name, [...next])
  }
  return { ticked, tick, forget: () => void phone.drafts.remove(name) }
}
