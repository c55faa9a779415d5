import { leastMiss, type Bath } from './program.ts'

export const obstacleKinds = ['headroom', 'bleedLimit', 'materialLimit', 'noMaterial', 'noPureMaterial'] as const

export interface Obstacle {
  /**
   * `headroom`: liquids would take more room than there is. `bleedLimit`: more would have to be bled. `materialLimit`: more of a
   * material than allowed or at hand. `noMaterial`: nothing provides a constituent. `noPureMaterial`: what provides it brings too
   * much of another, or too much water.
   */
  kind: (typeof obstacleKinds)[number]
  /** The material or constituent it is about; empty for headroom and bleed. */
  name: string
  /** Least weighted miss, were this obstacle alone out of the way. */
  missWithout: number
}

/**
 * What stands between a bath and its tolerances, most in the way first: each limit is lifted alone, each constituent given a pure
 * material, and what makes the miss smaller is an obstacle. Where nothing helps alone, it takes several, and what is then needed is
 * found by lifting all but one.
 */
export const obstaclesOf = (bath: Bath, miss: number): Obstacle[] => {
  const lifts = liftsOf(bath)
  const helps = (candidate: number, than: number): boolean => candidate < than * (1 - 1e-6)
  const alone = lifts
    .map(({ kind, name, lift }) => ({ kind, name, missWithout: leastMiss(lift(bath)) }))
    .filter(({ missWithout }) => helps(missWithout, miss))
    .sort((a, b) => a.missWithout - b.missWithout)
  if (alone.length > 0) return alone
  const allLifted = lifts.reduce((lifted, { lift }) => lift(lifted), bath)
  const best = leastMiss(allLifted)
  return lifts
    .filter((each) => helps(best, leastMiss(lifts.filter((other) => other !== each).reduce((lifted, { lift }) => lift(lifted), bath))))
    .map(({ kind, name }) => ({ kind, name, missWithout: miss }))
}

interface Lift {
  kind: Obstacle['kind']
  name: string
  lift(bath: Bath): Bath
}

const liftsOf = (bath: Bath): Lift[] => [
  ...(bath.materials.some((material) => material.displacesLitresPerUnit > 0)
    ? [{ kind: 'headroom' as const, name: '', lift: (it: Bath) => ({ ...it, mostLitres: it.aimLitres + 10 * it.litres }) }]
    : []),
  ...(bath.maxBleedLitres < bath.litres ? [{ kind: 'bleedLimit' as const, name: '', lift: (it: Bath) => ({ ...it, maxBleedLitres: it.litres }) }] : []),
  ...bath.materials
    .filter(({ maxAmount }) => Number.isFinite(maxAmount))
    .map(({ name }) => ({
      kind: 'materialLimit' as const,
      name,
      lift: (it: Bath) => ({ ...it, materials: it.materials.map((material) => (material.name === name ? { ...material, maxAmount: Infinity } : material)) }),
    })),
  ...bath.constituents.map(({ name }, index) => ({
    kind: bath.materials.some((material) => (material.provides[index] ?? 0) > 0) ? ('noPureMaterial' as const) : ('noMaterial' as const),
    name,
    lift: (it: Bath) => ({ ...it, materials: [...it.materials, pureMaterial(it, index)] }),
  })),
]

const pureMaterial = ({ constituents }: Bath, index: number): Bath['materials'][number] => ({
  name: '',
  gramsPerUnit: 1,
  provides: constituents.map((_, at) => (at === index ? 1 : 0)),
  displacesLitresPerUnit: 0,
  maxAmount: Infinity,
})
