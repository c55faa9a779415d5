import { holdMachine } from '../remedies/hold.ts'
import { setToAim } from '../remedies/set-to-aim.ts'
import { cutCellCurrent } from '../remedies/silver.ts'
import type { Row } from '../row.ts'

export const rinseOrWashFlowLow: Row = {
  code: 'rinseOrWashFlowLow',
  when: { at: ['rinse', 'stop', 'wash'], quantity: 'flow', side: 'low' },
  lookFirst: ['strainer', 'pressure', 'valve'],
  then: [setToAim, 'slowerOnlyIfDevelopmentAllows'],
  recheck: { minutes: 5 },
  hold: { when: 'none' },
  source: 'data sheet of a black-and-white print film, 1999; no flow at all holds: common practice, no source',
}

export const residualFails: Row = {
  code: 'residualFails',
  when: { at: ['wash', 'takeOff', 'fixing'], quantity: 'residual', side: 'high' },
  lookFirst: ['washFlow', 'exhaustedFixingBath'],
  then: ['setBatchAside', 'rewashBatch'],
  recheck: {},
  hold: { when: 'none' },
  source: 'ISO 18917 service note; released only after a new test',
}

export const cellCurrentOff: Row = {
  code: 'cellCurrentOff',
  when: { at: ['silverCell'], quantity: 'current' },
  lookFirst: ['clamps', 'plate', 'agitation'],
  then: [setToAim],
  recheck: { minutes: 10 },
  hold: { when: 'none' },
  source: 'US Navy Photography (Advanced) app. I; tolerance common practice',
}

export const cellSulfides: Row = {
  code: 'cellSulfides',
  when: { at: ['silverCell'], look: true },
  lookFirst: ['currentHighForSilver', 'agitationOff'],
  then: [cutCellCurrent, 'ventilate', 'readSulfiteAndPh', holdMachine],
  recheck: { minutes: 30 },
  hold: { when: 'always' },
  source: 'US Navy Photography (Advanced) app. I; an electrolytic-silver chapter',
}

export const dryerHumidityLow: Row = {
  code: 'dryerHumidityLow',
  when: { at: ['dryer'], quantity: 'humidity', side: 'low' },
  lookFirst: ['heatHigh'],
  then: ['lowerDryerTemperature', setToAim, 'smallSteps'],
  recheck: { passes: 1 },
  hold: { when: 'none' },
  source: 'data sheet of a black-and-white print film, 1999',
}

export const dryerHumidityHigh: Row = {
  code: 'dryerHumidityHigh',
  when: { at: ['dryer'], quantity: 'humidity', side: 'high' },
  lookFirst: ['exhaustBlocked', 'squeegeeWet', 'slowEmulsions'],
  then: ['squeegeeFirst', 'thenAirFlow', setToAim],
  recheck: { passes: 1 },
  hold: { when: 'none' },
  source: 'data sheet of a black-and-white print film, 1999; US Army SS0520',
}

export const dryerTemperatureOff: Row = {
  code: 'dryerTemperatureOff',
  when: { at: ['dryer'], quantity: 'temperature' },
  lookFirst: ['thermostat', 'squeegeeWet', 'airFlow'],
  then: ['squeegeeFirst', setToAim, 'oneDegreeAtATime'],
  recheck: { passes: 1 },
  hold: { when: 'none' },
  source: 'data sheet of a black-and-white print film, 1999; US Army SS0520',
}

export const dryingStreaks: Row = {
  code: 'dryingStreaks',
  when: { at: ['dryer', 'squeegee'], look: true },
  lookFirst: ['squeegee', 'unevenAir'],
  then: ['setSqueegee', 'setBaffles'],
  recheck: { passes: 1 },
  hold: { when: 'none' },
  source: 'US Army SS0520',
}

export const drainOut: Row = {
  code: 'drainOut',
  when: { at: ['effluent'], quantity: 'pH' },
  lookFirst: ['whatWasRunOff', 'permitLimits'],
  then: ['stopDischarge', 'findSource', 'tellSupervisor', 'logRunOff'],
  recheck: { minutes: 15 },
  hold: { when: 'none' },
  source: 'the site’s permit; common practice, no source',
}

export const drainSilverHigh: Row = {
  code: 'drainSilverHigh',
  when: { at: ['effluent'], quantity: 'concentration', of: 'silver', side: 'high' },
  lookFirst: ['fixerToDrain', 'carryOut', 'cellOff'],
  then: ['stopDischarge', 'runOffToRecoveryOnly', 'tellSupervisor'],
  recheck: { minutes: 60 },
  hold: { when: 'none' },
  source: 'the site’s permit; common practice, no source',
}
