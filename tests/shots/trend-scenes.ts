import type { Scene } from './scenes.ts'
import type { CheckId, StationId } from '../../src/plan/ids.ts'
import { judge } from '../../src/plan/limits.ts'
import { demoLab } from '../../src/demo/lab.ts'
import { past } from './strip-scenes.ts'
import type { Log } from './log.ts'

const at = Date.parse('2026-01-14T14:06:00Z')
const plan = demoLab()

/** Bromide that rises day by day since the bath was last bled, a little noisy. */
const bromide = (log: Log): void => {
  const planEntry = past(log)
  const check = plan.checks.find(({ id }) => id === 'neg-1-dev-bromide')!
  if (check.kind !== 'reading') return
  log.add('runOff', 60 * 24 * 12, { station: 'neg-1-dev' as StationId, waste: 'developer', litres: 40, destination: { to: 'drain' } })
  for (let day = 11; day >= 0; day--) {
    const value = Number((0.64 + (11 - day) * 0.008 + Math.sin(day * 2.3) * 0.01).toFixed(2))
    log.add('reading', day * 1440 + 15, { check: 'neg-1-dev-bromide' as CheckId, plan: planEntry, value, keyed: value.toFixed(2), unit: 'g/L', how: 'worked', verdict: judge(check.limits, value).verdict })
  }
}

/** A hundred thousand readings, one in half an hour, as they are after some years. */
const years = (log: Log): void => {
  const planEntry = past(log)
  let drift = 0
  for (let back = 100_000; back > 0; back--) {
    drift = 0.995 * drift + 0.012 * Math.sin(back * 12.9898) * Math.cos(back * 78.233)
    const value = Number((4.5 + drift + 0.03 * Math.sin(back * 1.7) + (back % 17_211 === 5 ? 0.5 : 0)).toFixed(2))
    log.add('reading', 60 * 24 * 4 + back * 30, { check: 'neg-1-fix-ph' as CheckId, plan: planEntry, value, keyed: value.toFixed(2), unit: 'pH', how: 'keyed', verdict: Math.abs(value - 4.5) > 0.15 ? 'ACT' : Math.abs(value - 4.5) > 0.1 ? 'WARN' : 'IN' })
  }
}

export const trendScenes: Record<string, Scene> = {
  'trends': { at, path: () => '/trends', log: (log) => void past(log) },
  'trend-ph': { at, path: () => '/trends/neg-1-fix-ph', log: (log) => void past(log) },
  'trend-temp': { at, path: () => '/trends/neg-1-dev-temp', log: (log) => void past(log, 9) },
  'trend-strip': { at, path: () => '/trends/neg-1-strip/gamma', log: (log) => void past(log, 12) },
  'trend-bromide': { at, path: () => '/trends/neg-1-dev-bromide', log: bromide },
  'trend-tank': { at, path: () => '/trends/neg-1-replenisher-left', log: (log) => void past(log) },
  'trend-years': { at, path: () => '/trends/neg-1-fix-ph', log: years },
}
