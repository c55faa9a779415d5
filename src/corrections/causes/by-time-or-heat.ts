import type { StripCheck } from '../../plan/check.ts'
import { placeOf } from '../../plan/find.ts'
import type { LabPlan } from '../../plan/lab-plan.ts'
import { figureLimits } from '../../plan/judge-strip.ts'
import type { LabState } from '../../projections/lab.ts'
import { spanAt } from '../../projections/machines.ts'
import { developSpeed } from '../../science/develop/speed.ts'
import { resultOf } from '../../science/evaluate.ts'
import { Refusal } from '../../science/refusal.ts'
import { isDeveloper } from '../bath-now.ts'

/** What would bring gamma back to its aim, two ways, and what else each moves. Neither mends a fault. */
export interface TimeOrHeat {
  gamma: number
  aim: number
  metresPerMinute: { from: number; to: number }
  /** Times that go with the speed, by station. */
  times: { station: string; name: string; kind: string; fromMinutes: number; toMinutes: number }[]
  /** Change of developer temperature for the same effect; absent where the plan does not know the coefficient. */
  celsius?: number
  inputs: { [field: string]: number }
}

export type TimeOrHeatAnswer = { ok: true; value: TimeOrHeat } | { ok: false; code: 'noGamma' | 'noDeveloper' | 'lawUnknown' | 'offTheCurve' }

/**
 * Speed by the time–gamma law of this film in this developer; temperature by the coefficient, which makes up for the same change of time:
 * t₂ ÷ t₁ = C^((T₁ − T₂) ÷ 10), so ΔT = 10·ln(new time ÷ time now) ÷ ln C.
 */
export const byTimeOrHeat = (lab: LabState, plan: LabPlan, strip: { check: StripCheck; figures: Readonly<Record<string, number>>; aims?: Readonly<Record<string, number>> | undefined }, now: number): TimeOrHeatAnswer => {
  const { check, figures, aims } = strip
  const figure = check.figures.find((it) => it.figure === 'gamma')
  const gamma = figures['gamma']
  if (!figure || gamma === undefined) return { ok: false, code: 'noGamma' }
  const { machine } = placeOf(plan, check.station)
  const pathMetres = machine.stations.filter(isDeveloper).reduce((sum, station) => sum + (station.pathMetres ?? 0), 0)
  if (pathMetres === 0) return { ok: false, code: 'noDeveloper' }
  if (!check.law) return { ok: false, code: 'lawUnknown' }
  const { gammaInfinity, ratePerMinute, coefficientPerTenCelsius } = check.law
  const from = spanAt(lab.machines[machine.id], now).metresPerMinute || machine.aimMetresPerMinute
  const { aim } = figureLimits(figure, aims)
  const inputs = { pathMetres, metresPerMinute: from, gammaInfinity, ratePerMinute, measuredGamma: gamma, aimGamma: aim }
  try {
    const { metresPerMinute: to } = resultOf(developSpeed, inputs)
    const times = machine.stations.flatMap(({ id, name, kind, pathMetres: path }) =>
      path !== undefined && ['developer', 'fixing', 'wash', 'dryer'].includes(kind) ? [{ station: id, name, kind, fromMinutes: path / from, toMinutes: path / to }] : [],
    )
    return {
      ok: true,
      value: { gamma, aim, metresPerMinute: { from, to }, times, inputs, ...(coefficientPerTenCelsius === undefined ? {} : { celsius: (10 * Math.log(from / to)) / Math.log(coefficientPerTenCelsius) }) },
    }
  } catch (thrown) {
    if (thrown instanceof Refusal) return { ok: false, code: 'offTheCurve' }
    throw thrown
  }
}
