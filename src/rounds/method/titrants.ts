import type { ReadingCheck } from '../../plan/check.ts'
import type { LabPlan, Method } from '../../plan/lab-plan.ts'
import type { LabState } from '../../projections/lab-state.ts'

export interface TitrantNow {
  /** Input of the calculation whose value it is. */
  field: string
  check: ReadingCheck
  /** Absent where it was never standardised. */
  value?: number
  standardisedAt?: number
  /** From then on its strength no longer counts. */
  expiresAt?: number
  state: 'good' | 'expired' | 'never' | 'outOfLimits'
}

const minute = 60_000

/** The titrants of a method as they stand: strength by the last standardisation, good until that is due again and its grace is over. */
export const titrantsNow = (state: LabState, plan: LabPlan, method: Method, now: number): TitrantNow[] =>
  Object.entries(method.titrants ?? {}).flatMap(([field, id]): TitrantNow[] => {
    const check = plan.checks.find((it): it is ReadingCheck => it.id === id && it.kind === 'reading')
    if (!check) return []
    const last = state.checks[check.id]?.recent.findLast(({ time, value }) => time <= now && value !== undefined)
    if (last?.value === undefined) return [{ field, check, state: 'never' }]
    const { schedule } = check
    const expiresAt = schedule.kind === 'interval' ? last.time + (schedule.minutes + schedule.graceMinutes) * minute : undefined
    const isExpired = expiresAt !== undefined && now > expiresAt
    return [
      {
        field, check, value: last.value, standardisedAt: last.time, ...(expiresAt === undefined ? {} : { expiresAt }),
        state: isExpired ? 'expired' : last.verdict === 'ACT' ? 'outOfLimits' : 'good',
      },
    ]
  })

/** Nothing may be worked out with a titrant that nobody knows. One that is out of its limits is known, and used as found. */
export const isUsable = ({ state }: TitrantNow): boolean => state === 'good' || state === 'outOfLimits'
