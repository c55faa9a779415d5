import type { LabPlan } from '../plan/lab-plan.ts'
import type { EntryId } from '../record/ids.ts'
import type { DataOf } from '../record/kinds.ts'

type Begun = { kind: 'run'; data: DataOf<'run'> } | { kind: 'reading'; data: DataOf<'reading'> } | { kind: 'look'; data: DataOf<'look'> }

/** Park–Miller, so that the same laboratory starts the same way each time. */
const chance = (seed: number): (() => number) => {
  let state = seed
  return () => {
    state = (state * 48271) % 2147483647
    return state / 2147483647
  }
}

const minutesAgo = (now: number, minutes: number): string => new Date(now - minutes * 60_000).toISOString()

/**
 * The invented laboratory as one comes to it in mid-shift: both machines run, the last hours have been read, and the next round waits.
 * The readings say when they were noted, as readings keyed later do.
 */
export const demoStart = (plan: LabPlan, planEntry: EntryId, now: number): Begun[] => {
  const random = chance(20_26)
  const runs: Begun[] = plan.machines.map((machine) => ({ kind: 'run', data: { machine: machine.id, state: 'running', metresPerMinute: machine.aimMetresPerMinute } }))
  const marks: Begun[] = []
  for (const check of plan.checks) {
    if (!check.states.includes('running') || check.kind === 'strip') continue
    const every = check.schedule.kind === 'interval' ? check.schedule.minutes : 240
    const times = check.kind === 'reading' ? Math.min(6, Math.ceil(360 / every)) : 1
    for (let back = times; back >= 1; back--) {
      // The newest lies somewhere in its last interval: some checks are due now, some in a while.
      const minutes = Math.max(2, (back - 1) * every + every * (0.55 + 0.5 * random()))
      if (check.kind === 'look') {
        marks.push({ kind: 'look', data: { check: check.id, plan: planEntry, right: true, notedAt: minutesAgo(now, minutes) } })
        continue
      }
      const { limits } = check
      const reach = Math.min(
        ...[limits.warningHigh, limits.warningLow, limits.actionHigh, limits.actionLow].filter((it) => it !== undefined).map((it) => Math.abs(it - limits.aim)),
        Math.max(check.step * 4, Math.abs(limits.aim) * 0.02),
      )
      const decimals = String(check.step).split('.')[1]?.length ?? 0
      const steps = Math.round((limits.aim + (random() - 0.5) * reach) / check.step)
      const keyed = (steps * check.step).toFixed(decimals)
      marks.push({
        kind: 'reading',
        data: { check: check.id, plan: planEntry, value: Number(keyed), keyed, unit: check.unit, how: 'keyed', verdict: 'IN', notedAt: minutesAgo(now, minutes) },
      })
    }
  }
  const noted = (it: Begun): string => ('notedAt' in it.data && it.data.notedAt ? it.data.notedAt : '')
  return [...runs, ...marks.sort((a, b) => (noted(a) < noted(b) ? -1 : 1))]
}
