import { blending, cooling, heating } from '../remedies/temperature.ts'
import type { Row } from '../row.ts'

export const developerTooWarm: Row = {
  code: 'developerTooWarm',
  when: { at: ['developer'], quantity: 'temperature', side: 'high' },
  lookFirst: ['probe', 'controller', 'chilledWaterSupply'],
  then: [cooling, 'noteMinutesAndDegrees'],
  recheck: { minutes: 5 },
  hold: { when: 'beyond', offAimBy: 0.5, unit: '°C' },
  source: 'US Army SS0520; limits common practice, no source',
}

export const developerTooCold: Row = {
  code: 'developerTooCold',
  when: { at: ['developer'], quantity: 'temperature', side: 'low' },
  lookFirst: ['heater', 'steam', 'waterMix'],
  then: [heating, 'noteMinutesAndDegrees'],
  recheck: { minutes: 5 },
  hold: { when: 'beyond', offAimBy: 0.5, unit: '°C' },
  source: 'common practice, no source',
}

export const bathTooWarm: Row = {
  code: 'bathTooWarm',
  when: { at: ['fixing', 'stop', 'rinse'], quantity: 'temperature', side: 'high' },
  lookFirst: ['othersWithinOneDegree', 'chilledWaterSupply'],
  then: [cooling],
  recheck: { minutes: 10 },
  hold: { when: 'beyond', offAimBy: 5, above: 27, unit: '°C' },
  source: 'manual of a colour print process, 2006; 27 °C and 5 °C from memory',
}

export const bathTooCold: Row = {
  code: 'bathTooCold',
  when: { at: ['fixing', 'stop', 'rinse'], quantity: 'temperature', side: 'low' },
  lookFirst: ['othersWithinOneDegree', 'heater'],
  then: [heating],
  recheck: { minutes: 10 },
  hold: { when: 'beyond', offAimBy: 5, unit: '°C' },
  source: 'manual of a colour print process, 2006; 5 °C from memory',
}

export const washTemperature: Row = {
  code: 'washTemperature',
  when: { at: ['wash'], quantity: 'temperature' },
  lookFirst: ['mixingValve', 'supplyTemperatures'],
  then: [blending],
  recheck: { minutes: 10 },
  hold: { when: 'beyond', offAimBy: 5, unit: '°C' },
  source: 'manual of a colour print process, 2006; the jump of 5 °C (reticulation) from memory',
}
