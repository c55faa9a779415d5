import { acidBaseDose } from './acidBase/dose.ts'
import { acidBasePH } from './acidBase/pH.ts'
import { airHumidity } from './air/humidity.ts'
import { bathCorrect } from './bath/correct.ts'
import { bathDrift } from './bath/drift.ts'
import { bathReplenishRate } from './bath/replenish-rate.ts'
import { bathTopUp } from './bath/top-up.ts'
import type { AnyCalculation } from './calculation.ts'
import { chartCapability } from './chart/capability.ts'
import { chartCusum } from './chart/cusum.ts'
import { chartEwma } from './chart/ewma.ts'
import { chartForecast } from './chart/forecast.ts'
import { chartIndividuals } from './chart/individuals.ts'
import { chartRules } from './chart/rules.ts'
import { chartXbarRange } from './chart/xbar-range.ts'
import { developFit } from './develop/fit.ts'
import { developSpeed } from './develop/speed.ts'
import { developTemperature } from './develop/temperature.ts'
import { developTime } from './develop/time.ts'
import { filmArea } from './film/area.ts'
import { filmImmersion } from './film/immersion.ts'
import { filmSplice } from './film/splice.ts'
import { hydrometerCorrect } from './hydrometer/correct.ts'
import { mixAcidMolarity } from './mix/acid-molarity.ts'
import { mixBatch } from './mix/batch.ts'
import { mixDilute } from './mix/dilute.ts'
import { mixHydrate } from './mix/hydrate.ts'
import { mixMolarMass } from './mix/molar-mass.ts'
import { phMeterBuffer } from './phMeter/buffer.ts'
import { phMeterCalibrate } from './phMeter/calibrate.ts'
import { phMeterRead } from './phMeter/read.ts'
import { phMeterSlope } from './phMeter/slope.ts'
import { printLights } from './print/lights.ts'
import { readingScreen } from './reading/screen.ts'
import { silverCurrent } from './silver/current.ts'
import { silverLoad } from './silver/load.ts'
import { silverPlate } from './silver/plate.ts'
import { stripCompare } from './strip/compare.ts'
import { stripCrossover } from './strip/crossover.ts'
import { stripCurve } from './strip/curve.ts'
import { stripDensity } from './strip/density.ts'
import { stripIsoSpeed } from './strip/iso-speed.ts'
import { titrationBackConcentration } from './titration/back-concentration.ts'
import { titrationConcentration } from './titration/concentration.ts'
import { titrationEndPoint } from './titration/end-point.ts'
import { titrationRepeatability } from './titration/repeatability.ts'
import { titrationStandardise } from './titration/standardise.ts'
import { washCascade } from './wash/cascade.ts'
import { washFlow } from './wash/flow.ts'
import { washResidual } from './wash/residual.ts'
import { waterBlend } from './water/blend.ts'
import { waterChill } from './water/chill.ts'
import { waterDensity } from './water/density.ts'
import { waterEvaporation } from './water/evaporation.ts'
import { waterRefrigeration } from './water/refrigeration.ts'
/** Every calculation of the product, in the order in which Bench and `calc list` show them. */
export const catalogue: readonly AnyCalculation[] = [
  // Water, heat and density
  waterDensity,
  waterBlend,
  waterChill,
  waterRefrigeration,
  hydrometerCorrect,
  waterEvaporation,
  // pH meter
  phMeterBuffer,
  phMeterSlope,
  phMeterCalibrate,
  phMeterRead,
  // Acid–base
  acidBasePH,
  acidBaseDose,
  // Titration
  titrationStandardise,
  titrationConcentration,
  titrationBackConcentration,
  titrationEndPoint,
  titrationRepeatability,
  // Mixing
  mixHydrate,
  mixMolarMass,
  mixDilute,
  mixAcidMolarity,
  mixBatch,
  // Bath correction and replenishment
  bathCorrect,
  bathTopUp,
  bathReplenishRate,
  bathDrift,
  // Film, silver, wash, air
  filmArea,
  filmImmersion,
  filmSplice,
  silverPlate,
  silverLoad,
  silverCurrent,
  washCascade,
  washFlow,
  washResidual,
  airHumidity,
  // Development and strips
  developFit,
  developTime,
  developSpeed,
  developTemperature,
  stripCurve,
  stripIsoSpeed,
  stripCompare,
  stripCrossover,
  stripDensity,
  printLights,
  // Control charts
  chartIndividuals,
  chartXbarRange,
  chartEwma,
  chartCusum,
  chartRules,
  chartCapability,
  chartForecast,
  readingScreen,
]

export const calculationById = (id: string): AnyCalculation | undefined => catalogue.find((it) => it.id === id)
