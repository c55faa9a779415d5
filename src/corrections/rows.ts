import type { Row } from './row.ts'
import {
  cellCurrentOff, cellSulfides, drainOut, drainSilverHigh, dryerHumidityHigh, dryerHumidityLow, dryerTemperatureOff, dryingStreaks, residualFails,
  rinseOrWashFlowLow,
} from './rows/after-fixing.ts'
import {
  agentHigh, agentLow, bromideHigh, bromideLow, circulationLow, developerAlkaliOff, developerPhHigh, developerPhLow, developerStill, developerSulfiteLow, filterBlocked,
  replenisherRateOff, speedOff,
} from './rows/developer.ts'
import {
  alumSludge, clearingSlow, fixingPhHigh, fixingPhLow, fixingSulfiteLow, hardeningFailing, silverHigh, sulfurClouding, thiosulfateLow,
} from './rows/fixing.ts'
import {
  levelAlone, levelHighStrengthLow, levelLowStrengthHigh, levelLowStrengthNormal, strengthAlone, strengthHighLevelLow, strengthHighLevelNormal,
  strengthLowLevelHigh, strengthLowLevelNormal,
} from './rows/level.ts'
import {
  stainClear, stainDirty, stripAllUp, stripFogUp, stripGammaDownFogUp, stripGammaOff, stripSpeedAndGammaDown, stripStreaks,
} from './rows/strip.ts'
import { bathTooCold, bathTooWarm, developerTooCold, developerTooWarm, washTemperature } from './rows/temperature.ts'

/** The trade's table of faults and remedies, where the product computes or advises. */
export const rows: readonly Row[] = [
  developerTooWarm, developerTooCold, bathTooWarm, bathTooCold, washTemperature,
  developerPhHigh, developerPhLow, bromideHigh, bromideLow, agentLow, agentHigh, developerSulfiteLow, developerAlkaliOff, circulationLow, filterBlocked, developerStill,
  levelLowStrengthNormal, levelLowStrengthHigh, levelHighStrengthLow, strengthHighLevelLow, strengthLowLevelHigh, strengthHighLevelNormal,
  strengthLowLevelNormal, levelAlone, strengthAlone,
  fixingPhHigh, fixingPhLow, fixingSulfiteLow, thiosulfateLow, silverHigh, clearingSlow, sulfurClouding, alumSludge, hardeningFailing,
  rinseOrWashFlowLow, residualFails, cellCurrentOff, cellSulfides, dryerHumidityLow, dryerHumidityHigh, dryerTemperatureOff, dryingStreaks,
  drainOut, drainSilverHigh, replenisherRateOff, speedOff,
  stripFogUp, stripAllUp, stripSpeedAndGammaDown, stripGammaDownFogUp, stripGammaOff,
  stripStreaks, stainDirty, stainClear,
]
