import type { Random } from './random.ts'

/** What stands on a meter: 1 to 6 figures, a point in most, a minus in some. All figures are equally likely, so that nothing is learnt by heart. */
export const figures = (random: Random): string => {
  const count = random.pick([1, 2, 2, 3, 3, 3, 3, 4, 4, 4, 5, 5, 6])
  const digits = Array.from({ length: count }, () => String(random.whole(0, 9)))
  const mostDecimals = Math.min(3, count - (random.chance(0.03) ? 0 : 1))
  const decimals = mostDecimals > 0 && random.chance(0.8) ? random.whole(1, mostDecimals) : 0
  const keepsZeros = random.chance(0.12)
  if (!keepsZeros) while (digits.length - decimals > 1 && digits[0] === '0') digits[0] = String(random.whole(1, 9))
  const whole = digits.slice(0, digits.length - decimals).join('')
  const part = decimals > 0 ? `.${digits.slice(digits.length - decimals).join('')}` : ''
  return `${random.chance(0.13) ? '-' : ''}${whole}${part}`
}

/** Letters that seven segments can form without looking like a figure; shown where a display reports trouble instead of a number. */
export const segmentWords = ['Err', 'HELP', 'LEr', 'CAL', 'HLd', 'FULL', 'PUFF', 'ChEC', 'nULL', 'bAtt', 'FAL', 'PrH', 'EEP', 'tEn'] as const

/** Words printed on and around instruments. None names a maker. */
export const printedWords = [
  'pH', 'mV', '°C', '°F', 'TEMP', 'HOLD', 'AUTO', 'ATC', 'CAL', 'mS/cm', 'uS/cm', 'g/L', 'A', 'V', 'gpm', 'L/min', 'DENSITY', 'FLOW', 'TANK', 'METER',
  'ON/OFF', 'MODE', 'RANGE', 'ZERO', 'SET', 'READ', 'D', 'ppm', '%', 'FIX', 'WASH', 'DEV', 'BATH', 'MAX', 'MIN', 'BATT', 'SLOPE', 'STANDBY',
] as const
