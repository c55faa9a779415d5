import type { PairCode } from '../../../projections/pairs.ts'

const figures: Record<string, string> = { baseFog: 'Base + fog', speed: 'Speed point', gamma: 'Gamma', contrast: 'Contrast', averageGradient: 'Average gradient', dMax: 'Greatest density' }

export const marks = {
  verdict: { IN: 'in limits', WARN: 'between warning and action limit', ACT: 'beyond the action limit' },
  station: { act: 'out of limits', warn: 'warning', late: 'late', due: 'due' },
  machine: {
    startUp: 'Starting up',
    running: 'Running',
    standby: 'Standby',
    changeOver: 'Changing over',
    shutDown: 'Shutting down',
    stopped: 'Stopped',
  },
  held: 'Held',
  /** A strip figure by the name that the plan gives it. */
  figure: (name: string): string => figures[name] ?? name,
  pairs: {
    evaporation: 'Level low and gravity high: evaporation. Water only, to the mark.',
    lossOfBath: 'Level low, gravity in limits: a leak, carry-out, or the rate is low.',
    waterIn: 'Level high and gravity low: water comes in. A leaking coil, or wash water back?',
    wrongMix: 'Gravity high, level in limits: the replenisher is over-strength.',
    weakMix: 'Gravity low, level in limits: diluted, or an exhausted mix.',
    overfed: 'Level high, gravity in limits: the rate is high, or the overflow is blocked.',
    lossAndDilution: 'Both low: bath was lost and water came in.',
    concentrated: 'Both high: over-strength replenisher, fed too fast.',
    apart: 'These two should agree and do not.',
    readTheOther: 'Read the other one of the pair now; together they say what it is.',
  } satisfies Record<PairCode, string>,
}
