import { logGammaPerChargeSquared, debyeHuckelConstant, type ActivityModel } from '../../src/science/acidBase/activity.ts'
import { acids, water, type AcidSystem } from '../../src/science/acidBase/constants.ts'
import { pKAt } from '../../src/science/acidBase/pk-at.ts'
import { saturation } from '../../src/science/air/humidity.ts'
import { rangeConstants } from '../../src/science/chart/constants.ts'
import { studentT } from '../../src/science/chart/student.ts'
import { straightLine } from '../../src/science/strip/straight-line.ts'

type Inputs = Record<string, unknown>
type Kernel = (inputs: Inputs) => Record<string, unknown>

const pK: Kernel = ({ acid, step, celsius }) => ({
  pK: pKAt(acid === 'water' ? water : acids[acid as AcidSystem].steps[step as number]!, celsius as number),
})

const gamma: Kernel = ({ ionicStrength, charge, activity }) => ({
  gamma: 10 ** (logGammaPerChargeSquared(ionicStrength as number, activity as ActivityModel, debyeHuckelConstant(25)) * (charge as number) ** 2),
})

/** Functions that published tables can be held against, but that are no entry of the catalogue. Ids start with `kernel.`. */
export const kernels: Readonly<Record<string, Kernel>> = {
  'kernel.acidBase.pK': pK,
  'kernel.acidBase.activity': gamma,
  'kernel.air.saturation': ({ celsius }) => saturation({ celsius: celsius as number, pascals: 101_325 }),
  'kernel.strip.straightLine': ({ x, y }) => ({ ...straightLine(x as number[], y as number[]) }),
  'kernel.chart.studentT': ({ outside, degrees }) => ({ t: studentT({ outside: outside as number, degrees: degrees as number }) }),
  'kernel.chart.rangeConstants': ({ count }) => ({ ...rangeConstants(count as number) }),
}
