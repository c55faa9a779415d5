import type { Bath } from '../plan/machine.ts'

/**
 * Time to wait before a reading counts again, from the bath's own volume and circulation.
 *
 * A turnover is volume ÷ circulation. In an ideally stirred tank 1 − e⁻³ = 95 % of a dose is mixed in after 3 turnovers and 1 − e⁻⁵ = 99 %
 * after 5: three for pH and temperature, five for a titration. A tank with dead corners needs longer; the re-check shows it.
 */
export type Wait = 'pH' | 'titration'

const turnovers: Readonly<Record<Wait, number>> = { pH: 3, titration: 5 }

/** Acid into a fixing bath waits these ten minutes besides: it is poured slowly. From memory. */
const pouringSeconds = 600

export interface MixingTime {
  seconds: number
  turnovers: number
  secondsPerTurnover: number
}

/** @example mixingTime({ litres: 1000, circulationLitresPerMinute: 150 }, 'pH').seconds // 1200 */
export const mixingTime = (
  { litres, circulationLitresPerMinute }: Pick<Bath, 'litres' | 'circulationLitresPerMinute'>,
  wait: Wait,
  { slowAcid = false } = {},
): MixingTime => {
  const secondsPerTurnover = (litres / circulationLitresPerMinute) * 60
  const seconds = turnovers[wait] * secondsPerTurnover + (slowAcid ? pouringSeconds : 0)
  return { seconds: Math.ceil(seconds), turnovers: turnovers[wait], secondsPerTurnover }
}
