import { holdMachine } from '../remedies/hold.ts'
import { speedFromGamma } from '../remedies/speed.ts'
import type { Row, When } from '../row.ts'

/** Fog, speed and gamma up mean more density. A strip that was out is repeated before anything is believed. */
const at: When['at'] = ['strip', 'developer']
const confirmed: Row['hold'] = { when: 'confirmed' }

export const stripFogUp: Row = {
  code: 'stripFogUp',
  when: { at, strip: { fog: 'high', speed: 'in', gamma: 'in' } },
  lookFirst: ['lightLeak', 'safelight', 'sulfideFog', 'oldStripStock'],
  then: ['repeatStrip', 'darkCheck', 'runWasteFilmIfIdle'],
  recheck: { strip: true },
  hold: confirmed,
  source: 'Wheeler p. 110; from memory',
}

export const stripAllUp: Row = {
  code: 'stripAllUp',
  when: { at, strip: { fog: 'high', speed: 'high', gamma: 'high' } },
  lookFirst: ['developerTemperature', 'speedByStopwatch', 'developerPh', 'agitation'],
  then: ['readDeveloperTemperature', 'timeSpeed', 'readDeveloperPh', speedFromGamma],
  recheck: { strip: true },
  hold: confirmed,
  source: 'Film Archives On-Line sect. 10; pH from memory',
}

export const stripSpeedAndGammaDown: Row = {
  code: 'stripSpeedAndGammaDown',
  when: { at, strip: { speed: 'low', gamma: 'low' } },
  lookFirst: ['developerTemperature', 'speedByStopwatch', 'levelAndStrength', 'bromide'],
  then: ['readDeveloperTemperature', 'timeSpeed', 'readLevelAndStrength', 'titrateBromide', speedFromGamma],
  recheck: { strip: true },
  hold: confirmed,
  source: 'Film Archives On-Line sect. 10; the rest from memory',
}

export const stripGammaDownFogUp: Row = {
  code: 'stripGammaDownFogUp',
  when: { at, strip: { gamma: 'low', fog: 'high' } },
  lookFirst: ['exhausted', 'oxidised', 'wrongReplenisher'],
  then: ['analyseDeveloper', 'checkReplenisherRate', 'replaceIfOxidised'],
  recheck: { turnovers: 3, strip: true },
  hold: confirmed,
  source: 'from memory',
}

export const stripGammaOff: Row = {
  code: 'stripGammaOff',
  when: { at, strip: {} },
  lookFirst: ['developerTemperature', 'speedByStopwatch', 'developerPh', 'bromide'],
  then: ['repeatStrip', 'readDeveloperTemperature', 'timeSpeed', 'analyseDeveloper', speedFromGamma],
  recheck: { strip: true },
  hold: confirmed,
  source: 'US Navy Photography (Advanced) ch. 2: one cause at a time, the likeliest first',
}

/** What the eye sees on a strip that its figures do not show. */
export const stripStreaks: Row = {
  code: 'stripStreaks',
  when: { at: ['strip'], look: true },
  lookFirst: ['jets', 'pump', 'airLeaks', 'filter'],
  then: [holdMachine, 'restoreCirculation', 'repeatStrip'],
  recheck: { strip: true },
  hold: { when: 'always' },
  source: 'Wheeler p. 110; National Film and Sound Archive glossary',
}

export const stainDirty: Row = {
  code: 'stainDirty',
  when: { at: ['strip'], look: true },
  lookFirst: ['exhaustedFixingBath', 'silver', 'washFlow'],
  then: [holdMachine, 'readSilver', 'readThiosulfate', 'setBatchAside', 'rewashBatch'],
  recheck: { strip: true },
  hold: { when: 'always' },
  source: 'Wheeler p. 110: silver left by poor fixing',
}

export const stainClear: Row = {
  code: 'stainClear',
  when: { at: ['strip'], look: true },
  lookFirst: ['oxidised', 'airLeaks', 'staleBath'],
  then: ['titrateDeveloperSulfite', 'replaceIfOxidised'],
  recheck: { strip: true },
  hold: { when: 'none' },
  source: 'Wheeler p. 110: oxidised developer',
}
