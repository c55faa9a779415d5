import { useEffect, useMemo, useState } from 'preact/hooks'
import { planChanges, type PlanChange } from '../../plan/changes.ts'
import { personOf } from '../../plan/find.ts'
import type { ParsedPlan } from '../../plan/plan-problems.ts'
import { isObject } from '../../plan/same-value.ts'
import type { WrittenPlan } from '../../plan/written-plan.ts'
import type { PlanInForce } from '../../projections/plans.ts'
import type { EntryId } from '../../record/ids.ts'
import { useApp } from '../app-context.ts'
import { parseDraft } from './parse-draft.ts'

export const draftKey = 'plan-draft'

interface KeptDraft {
  /** The revision from which it was begun. */
  base: EntryId
  plan: WrittenPlan
  /** What is to stand beside the revision, gathered while editing. */
  why: string
}

export interface Draft {
  /** The last revision, in force or to come: what a change starts from. */
  latest: PlanInForce
  /** The revision from which this draft was begun; another one than `latest` came meanwhile. */
  base: PlanInForce
  isStale: boolean
  /** As edited: it may not hold yet. */
  plan: WrittenPlan
  why: string
  parsed: ParsedPlan
  changes: readonly PlanChange[]
  mayEdit: boolean
  change(plan: WrittenPlan, why?: string): void
  /** Begins anew from the last revision, with these changes put on top of it. */
  rebase(plan: WrittenPlan): void
  drop(): Promise<void>
}

/** A draft of another version of the app is let go rather than shown wrong. */
const isSane = (kept: unknown): kept is KeptDraft =>
  isObject(kept) && typeof kept['base'] === 'string' && typeof kept['why'] === 'string' && isObject(kept['plan']) &&
  ['people', 'shifts', 'machines', 'checks', 'materials', 'methods'].every((list) => Array.isArray((kept['plan'] as Record<string, unknown>)[list]))

/**
 * The plan as it is being changed on this phone. It is kept with every key that is pressed, so that leaving, a call or an empty battery loses nothing;
 * nobody else sees it before it is signed. `undefined` while it is being fetched, or where there is no plan.
 */
export const useDraft = (): Draft | undefined => {
  const { phone, lab, person, plan: inForce } = useApp()
  const [kept, setKept] = useState<KeptDraft | 'none'>()
  const { revisions } = lab.value.state.plans
  const latest = revisions.at(-1)
  useEffect(() => {
    void phone.drafts.get(draftKey).then((it) => setKept(isSane(it) ? it : 'none'))
  }, [])

  const own = kept === 'none' ? undefined : kept
  const base = own && revisions.find(({ id }) => id === own.base)
  const plan: WrittenPlan | undefined = base ? own.plan : latest?.plan
  const parsed = useMemo(() => (plan ? parseDraft(plan) : undefined), [plan])
  const changes = useMemo(() => (plan && (base ?? latest) ? planChanges((base ?? latest)!.plan, plan) : []), [plan, base, latest])
  if (!kept || !latest || !plan || !parsed) return undefined

  const keep = (next: KeptDraft): void => {
    setKept(next)
    void phone.drafts.put(draftKey, next)
  }
  const current = inForce.value?.plan ?? latest.plan
  return {
    latest,
    base: base ?? latest,
    isStale: base !== undefined && base.id !== latest.id,
    plan,
    why: own?.why ?? '',
    parsed,
    changes,
    mayEdit: person.value !== null && personOf(current, person.value)?.role === 'supervisor',
    change: (next, why) => keep({ base: (base ?? latest).id, plan: next, why: why ?? own?.why ?? '' }),
    rebase: (next) => keep({ base: latest.id, plan: next, why: own?.why ?? '' }),
    drop: async () => {
      await phone.drafts.remove(draftKey)
      setKept('none')
    },
  }
}
