import { gramsPerMillilitreOfWater } from '../../src/science/water/density.ts'

/** Functions that published tables can be held against, but that are no entry of the catalogue. Ids start with `kernel.`. */
export const kernels: Readonly<Record<string, (inputs: Record<string, unknown>) => Record<string, unknown>>> = {
  'kernel.water.density': ({ celsius }) => ({ gramsPerMillilitre: gramsPerMillilitreOfWater(celsius as number) }),
}
