import { acidBaseDose } from './acidBase/dose.ts'
import { acidBasePH } from './acidBase/pH.ts'
import type { AnyCalculation } from './calculation.ts'
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
import { titrationBackConcentration } from './titration/back-concentration.ts'
import { titrationConcentration } from './titration/concentration.ts'
import { titrationEndPoint } from './titration/end-point.ts'
import { titrationStandardise } from './titration/standardise.ts'
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
  // Mixing
  mixHydrate,
  mixMolarMass,
  mixDilute,
  mixAcidMolarity,
  mixBatch,
  // Bath correction and replenishment
  // Film, silver, wash, air
  // Development and strips
  // Control charts
]

export const calculationById = (id: string): AnyCalculation | undefined => catalogue.find((it) => it.id === id)
