import { evaporatedWater, topUpToMark } from '../remedies/water.ts'
import type { Row } from '../row.ts'

const tanks = ['developer', 'fixing', 'stop'] as const

export const levelLowStrengthNormal: Row = {
  code: 'levelLowStrengthNormal',
  when: { at: tanks, quantity: 'level', side: 'low', paired: { quantity: 'specificGravity', is: 'in' } },
  lookFirst: ['leak', 'carryOut', 'lowRate'],
  then: [topUpToMark],
  recheck: { minutes: 15 },
  hold: { when: 'none' },
  source: 'common practice, no source',
}

export const levelLowStrengthHigh: Row = {
  code: 'levelLowStrengthHigh',
  when: { at: tanks, quantity: 'level', side: 'low', paired: { quantity: 'specificGravity', is: 'out', side: 'high' } },
  lookFirst: ['evaporation', 'lidsOpen'],
  then: [evaporatedWater],
  recheck: { turnovers: 3 },
  hold: { when: 'none' },
  source: 'common practice, no source',
}

export const strengthHighLevelLow: Row = { ...levelLowStrengthHigh, code: 'strengthHighLevelLow', when: { at: tanks, quantity: 'specificGravity', side: 'high', paired: { quantity: 'level', is: 'out', side: 'low' } } }

export const levelHighStrengthLow: Row = {
  code: 'levelHighStrengthLow',
  when: { at: tanks, quantity: 'level', side: 'high', paired: { quantity: 'specificGravity', is: 'out', side: 'low' } },
  lookFirst: ['leakingCoil', 'washBack'],
  then: ['shutWater', 'findLeak', 'runOffAndRestoreByAnalysis'],
  recheck: { turnovers: 3, strip: true },
  hold: { when: 'none' },
  source: 'common practice, no source; a coil leak holds the machine',
}

export const strengthLowLevelHigh: Row = { ...levelHighStrengthLow, code: 'strengthLowLevelHigh', when: { at: tanks, quantity: 'specificGravity', side: 'low', paired: { quantity: 'level', is: 'out', side: 'high' } } }

export const strengthHighLevelNormal: Row = {
  code: 'strengthHighLevelNormal',
  when: { at: tanks, quantity: 'specificGravity', side: 'high', paired: { quantity: 'level', is: 'in' } },
  lookFirst: ['replenisherTooStrong'],
  then: ['stopReplenisher', 'weakerMix', 'neverDiluteBlindly'],
  recheck: { turnovers: 3 },
  hold: { when: 'none' },
  source: 'US Navy Photography (Advanced) ch. 2; common practice',
}

export const strengthLowLevelNormal: Row = {
  code: 'strengthLowLevelNormal',
  when: { at: tanks, quantity: 'specificGravity', side: 'low', paired: { quantity: 'level', is: 'in' } },
  lookFirst: ['dilution', 'exhaustedMix'],
  then: ['analyseThenAddByCard', 'checkReplenisherRate'],
  recheck: { turnovers: 3 },
  hold: { when: 'none' },
  source: 'US Navy Photography (Advanced) ch. 2; common practice',
}

/** One of the pair alone says too little: the other is read first. */
export const levelAlone: Row = {
  code: 'levelAlone',
  when: { at: tanks, quantity: 'level' },
  lookFirst: ['readSpecificGravity'],
  then: ['readOtherOfPair'],
  recheck: { minutes: 15 },
  hold: { when: 'none' },
  source: 'common practice, no source',
}
export const strengthAlone: Row = { ...levelAlone, code: 'strengthAlone', when: { at: tanks, quantity: 'specificGravity' }, lookFirst: ['readLevel'] }
