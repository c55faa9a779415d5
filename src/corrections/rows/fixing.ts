import { acid } from '../remedies/acid.ts'
import { bleedSilver, composition } from '../remedies/composition.ts'
import { holdMachine, replaceBath } from '../remedies/hold.ts'
import { alkaliRefused } from '../remedies/mild.ts'
import { raiseCellCurrent } from '../remedies/silver.ts'
import { sulfiteForPh, sulfiteToAim, sulfiteWhereShort } from '../remedies/sulfite.ts'
import type { Row } from '../row.ts'

const fixingPapers = 'Crabtree and Hartt 1929; Studio Light 1916 to 1922'

export const fixingPhHigh: Row = {
  code: 'fixingPhHigh',
  when: { at: ['fixing'], quantity: 'pH', side: 'high' },
  lookFirst: ['developerCarryOver', 'rinseFlow'],
  then: ['restoreRinse', sulfiteWhereShort, acid],
  recheck: { turnovers: 3, minutes: 10 },
  hold: { when: 'beyond', above: 5.2, unit: 'pH' },
  source: 'Crabtree and Hartt 1929; data sheet of a black-and-white print film, 1999; numbers from memory',
}

export const fixingPhLow: Row = {
  code: 'fixingPhLow',
  when: { at: ['fixing'], quantity: 'pH', side: 'low' },
  lookFirst: ['overAcid', 'sulfiteShort', 'stopCarryOver'],
  then: [sulfiteForPh, alkaliRefused, 'coolBath'],
  recheck: { turnovers: 3 },
  hold: { when: 'beyond', below: 3.9, unit: 'pH' },
  source: 'after the fixing-bath notes of Studio Light; sulfur dioxide and numbers from memory',
}

export const fixingSulfiteLow: Row = {
  code: 'fixingSulfiteLow',
  when: { at: ['fixing'], quantity: 'concentration', of: 'sodiumSulfite', side: 'low' },
  lookFirst: ['airLeaks', 'overAcid', 'rinseFlow'],
  then: [sulfiteToAim, 'readPhAfter'],
  recheck: { turnovers: 5 },
  hold: { when: 'none' },
  source: fixingPapers,
}

export const thiosulfateLow: Row = {
  code: 'thiosulfateLow',
  when: { at: ['fixing'], quantity: 'concentration', of: ['sodiumThiosulfate', 'ammoniumThiosulfate'], side: 'low' },
  lookFirst: ['washBack', 'lowRate', 'carryOut'],
  then: [composition],
  recheck: { turnovers: 5 },
  hold: { when: 'none' },
  source: 'solution only: Crabtree and Hartt 1929 p. 400; the rest from memory',
}

export const silverHigh: Row = {
  code: 'silverHigh',
  when: { at: ['fixing'], quantity: 'concentration', of: 'silver', side: 'high' },
  lookFirst: ['cellOff', 'lowRate'],
  then: [raiseCellCurrent, 'raiseFixingReplenishment', bleedSilver, 'runOffToRecoveryOnly'],
  recheck: { minutes: 60 },
  hold: { when: 'none' },
  source: 'US Navy Photography (Advanced) app. I; steps common practice; recovery from memory',
}

export const clearingSlow: Row = {
  code: 'clearingSlow',
  when: { at: ['fixing'], quantity: 'duration', side: 'high' },
  lookFirst: ['temperature', 'silver', 'thiosulfate'],
  then: ['readFixingTemperature', 'readSilver', 'readThiosulfate', 'replenish', 'changeAtTwiceFreshTime'],
  recheck: { minutes: 15 },
  hold: { when: 'none' },
  source: 'US Navy Photography (Basic) ch. 9 to 10; beyond half the fixing time it holds',
}

export const sulfurClouding: Row = {
  code: 'sulfurClouding',
  when: { at: ['fixing'], look: true },
  lookFirst: ['heat', 'overAcid', 'sulfiteShort'],
  then: [holdMachine, 'coolBath', 'sulfiteDoesNotRedissolve', replaceBath],
  recheck: {},
  hold: { when: 'always' },
  source: fixingPapers,
}

export const alumSludge: Row = {
  code: 'alumSludge',
  when: { at: ['fixing'], look: true },
  lookFirst: ['acidUsedUp', 'borateShort', 'wrongMixingOrder'],
  then: [holdMachine, 'filterOnlyIfSlight', 'acidFirstThenTest', replaceBath],
  recheck: { minutes: 30 },
  hold: { when: 'always' },
  source: fixingPapers,
}

export const hardeningFailing: Row = {
  code: 'hardeningFailing',
  when: { at: ['fixing'], look: true },
  lookFirst: ['phOutOfBand', 'alumSpent', 'warmWash'],
  then: ['bringPhIntoLimits', 'alumAsSolution', 'washCooler'],
  recheck: { minutes: 60 },
  hold: { when: 'none' },
  source: 'from memory; soft film holds',
}
