import { composition } from '../remedies/composition.ts'
import { holdMachine } from '../remedies/hold.ts'
import { formulaAlkali, mildAcid } from '../remedies/mild.ts'
import { cutReplenishment, raiseReplenishment } from '../remedies/replenishment.ts'
import { setToAim } from '../remedies/set-to-aim.ts'
import type { Row } from '../row.ts'

const agents = ['metol', 'hydroquinone', 'phenidone'] as const

export const developerPhHigh: Row = {
  code: 'developerPhHigh',
  when: { at: ['developer'], quantity: 'pH', side: 'high' },
  lookFirst: ['meter', 'buffers', 'temperatureOfReading', 'replenisherMixedWrong'],
  then: [mildAcid],
  recheck: { turnovers: 3, strip: true },
  hold: { when: 'confirmed' },
  source: 'US Navy Photography (Advanced) ch. 2; the adds from memory',
}

export const developerPhLow: Row = {
  code: 'developerPhLow',
  when: { at: ['developer'], quantity: 'pH', side: 'low' },
  lookFirst: ['staleBath', 'fixerCarriedBack'],
  then: ['ifContaminatedHoldAndReplace', formulaAlkali],
  recheck: { turnovers: 3, strip: true },
  hold: { when: 'none' },
  source: 'from memory',
}

export const bromideHigh: Row = {
  code: 'bromideHigh',
  when: { at: ['developer'], quantity: 'concentration', of: 'potassiumBromide', side: 'high' },
  lookFirst: ['underReplenished', 'heavyDensityFilm'],
  then: [raiseReplenishment, composition, 'neverMaskWithAgent'],
  recheck: { turnovers: 5, strip: true },
  hold: { when: 'none' },
  source: 'US Army SS0520 for the rate; the rest from memory',
}

export const bromideLow: Row = {
  code: 'bromideLow',
  when: { at: ['developer'], quantity: 'concentration', of: 'potassiumBromide', side: 'low' },
  lookFirst: ['overReplenished', 'newBath'],
  then: [cutReplenishment, composition],
  recheck: { turnovers: 3, strip: true },
  hold: { when: 'none' },
  source: 'from memory',
}

export const agentLow: Row = {
  code: 'agentLow',
  when: { at: ['developer'], quantity: 'concentration', of: agents, side: 'low' },
  lookFirst: ['aeration', 'idleHours', 'lowRate'],
  then: [composition],
  recheck: { turnovers: 5, strip: true },
  hold: { when: 'none' },
  source: 'order of mixing from memory',
}

export const agentHigh: Row = {
  code: 'agentHigh',
  when: { at: ['developer'], quantity: 'concentration', of: agents, side: 'high' },
  lookFirst: ['replenisherTooStrong', 'overReplenished', 'waterLost'],
  then: [cutReplenishment, composition],
  recheck: { turnovers: 5, strip: true },
  hold: { when: 'none' },
  source: 'common practice, no source',
}

export const developerSulfiteLow: Row = {
  code: 'developerSulfiteLow',
  when: { at: ['developer'], quantity: 'concentration', of: 'sodiumSulfite', side: 'low' },
  lookFirst: ['airLeaks', 'overSplash'],
  then: [composition, 'readPhAfter'],
  recheck: { turnovers: 5 },
  hold: { when: 'none' },
  source: 'from memory; five turnovers for a titration by arithmetic',
}

export const developerAlkaliOff: Row = {
  code: 'developerAlkaliOff',
  when: { at: ['developer'], quantity: 'concentration', of: ['borax', 'sodiumCarbonate', 'potassiumCarbonate', 'sodiumMetaborate', 'sodiumSulfite'] },
  lookFirst: ['replenisherMixedWrong', 'readPhToo'],
  then: [composition, 'readPhAfter'],
  recheck: { turnovers: 5, strip: true },
  hold: { when: 'none' },
  source: 'common practice, no source',
}

export const circulationLow: Row = {
  code: 'circulationLow',
  when: { at: ['developer', 'fixing'], quantity: 'flow', side: 'low' },
  lookFirst: ['pump', 'filter', 'byPassOpen', 'jets'],
  then: ['restoreCirculation'],
  recheck: { minutes: 5 },
  hold: { when: 'none' },
  source: 'Wheeler pp. 110, 116; National Film and Sound Archive glossary; no flow at all holds: common practice',
}

export const filterBlocked: Row = {
  code: 'filterBlocked',
  when: { at: ['developer', 'fixing', 'wash'], quantity: 'pressureDrop', side: 'high' },
  lookFirst: ['byPassOpen', 'pump'],
  then: ['changeFilter'],
  recheck: { minutes: 5 },
  hold: { when: 'none' },
  source: 'common practice, no source',
}

export const developerStill: Row = {
  code: 'developerStill',
  when: { at: ['developer'], look: true },
  lookFirst: ['pump', 'jets', 'airLeaks'],
  then: [holdMachine, 'restoreCirculation'],
  recheck: { minutes: 5 },
  hold: { when: 'always' },
  source: 'Film Archives On-Line sect. 9; Wheeler pp. 110, 116',
}

export const replenisherRateOff: Row = {
  code: 'replenisherRateOff',
  when: { at: ['replenisher', 'developer', 'fixing'], quantity: 'replenishment' },
  lookFirst: ['leaderOrFilmRate', 'flowTube', 'bucketAndWatch'],
  then: [setToAim],
  recheck: { minutes: 15 },
  hold: { when: 'none' },
  source: 'Film Archives On-Line sect. 9; data sheet of a black-and-white print film, 1999',
}

export const speedOff: Row = {
  code: 'speedOff',
  when: { at: ['drive'], quantity: 'speed' },
  lookFirst: ['stopwatchNotMeter', 'mains'],
  then: [setToAim, 'correctDevelopmentTime'],
  recheck: { minutes: 1 },
  hold: { when: 'none' },
  source: 'Film Archives On-Line sect. 9; beyond 2 %: common practice, no source',
}
