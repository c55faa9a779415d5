import { useEffect, useState } from 'preact/hooks'
import type { Check } from '../../plan/check.ts'
import { dueChecks } from '../../projections/due.ts'
import { presence, presenceKey, standsAt } from '../../rounds/presence.ts'
import { useApp, useWords } from '../app-context.ts'
import { NotFound } from '../not-found.tsx'
import { Screen } from '../screen.tsx'
import { CheckFlow } from './check-flow.tsx'
import { freshHalf, half as halfSchema, halfKey, type Half } from './half.ts'

/** One check outside a round: a repeat, a re-check, or something somebody wants to look at now. */
export const CheckScreen = () => {
  const { plan, router } = useApp()
  const check = plan.value?.plan.checks.find(({ id }) => id === router.here.value.rest[0])
  return check ? <Known check={check} /> : <NotFound back />
}

const Known = ({ check }: { check: Check }) => {
  const { plan, lab, phone, router } = useApp()
  const words = useWords()
  const [half, setHalf] = useState<Half>()
  const key = halfKey(check.id)
  useEffect(() => {
    void Promise.all([phone.drafts.get(key), phone.drafts.get(presenceKey)]).then(([kept, stood]) => {
      const now = phone.clock.now()
      const parsed = halfSchema.safeParse(kept)
      const fresh = parsed.success ? parsed.data : freshHalf(now)
      setHalf(standsAt(presence.safeParse(stood).data, check.station, now) ? { ...fresh, atTank: true } : fresh)
    })
  }, [key])
  if (!half) return <Screen title={check.name} back />
  const keep = (next: Half): void => {
    setHalf(next)
    void phone.drafts.put(key, next)
  }
  const due = dueChecks(lab.value.state, plan.value!.plan, phone.clock.now()).find((it) => it.check.id === check.id)
  return (
    <CheckFlow
      check={check}
      half={half}
      due={due?.dueAt ?? phone.clock.now()}
      meta=""
      onHalf={keep}
      onAnswered={(how) => {
        setHalf(freshHalf(phone.clock.now()))
        void phone.drafts.remove(key)
        if (how === 'skipped') router.back()
      }}
      onUndone={(_, keyed) => keep({ ...freshHalf(phone.clock.now()), keyed })}
      onNoted={() => router.back()}
      next={{ label: words.round.verdict.done, later: words.round.verdict.later, go: () => router.back() }}
    />
  )
}
