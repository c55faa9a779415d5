import { bestCorrection, leastMiss, type Bath, type Correction } from './program.ts'

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
  /** Least weighted miss, were this obstacle out of the way (and the first of each turn before). */
  missWithout: number
  /** Obstacles of one turn are alternatives; those of the next remain when the first of each turn before is out of the way. */
  turn: number
}

const mostTurns = 3

/**
 * What stands between a bath and its tolerances: each limit that binds is lifted alone, each constituent given a pure material, and
 * what makes the miss smaller is an obstacle, most in the way first. Then the first is taken as lifted, and so on, until the
 * tolerances are reached or nothing more helps.
 */
export const obstaclesOf = (bath: Bath, correction: Correction): Obstacle[] => {
  const obstacles: Obstacle[] = []
  let here = bath
  let now = correction
  for (let turn = 1; turn <= mostTurns && now.miss > 0; turn++) {
    const helpful = liftsOf(here, now)
      .map((each) => ({ ...each, missWithout: leastMiss(each.lifted) }))
      .filter(({ missWithout }) => missWithout < now.miss * (1 - 1e-6))
      .sort((a, b) => a.missWithout - b.missWithout)
    const [first] = helpful
    if (!first) break
    obstacles.push(...helpful.map(({ kind, name, missWithout }) => ({ kind, name, missWithout: missWithout < negligibleMiss ? 0 : missWithout, turn })))
    here = first.lifted
    now = bestCorrection(here)
  }
  return obstacles
}

const negligibleMiss = 1e-9 // tolerances

interface Lift {
  kind: Obstacle['kind']
  name: string
  lifted: Bath
}

/** Only a limit that binds can be an obstacle; headroom binds in a way of its own, since water is filled up to the aim level only. */
const liftsOf = (bath: Bath, { bleedLitres, amounts }: Correction): Lift[] => {
  const { constituents, materials } = bath
  const lifts: Lift[] = []
  if (materials.some(({ displacesLitresPerUnit }) => displacesLitresPerUnit > 0))
    lifts.push({ kind: 'headroom', name: '', lifted: { ...bath, mostLitres: bath.aimLitres + 10 * bath.litres } })
  if (bath.maxBleedLitres < bath.litres && binds(bleedLitres, bath.maxBleedLitres))
    lifts.push({ kind: 'bleedLimit', name: '', lifted: { ...bath, maxBleedLitres: bath.litres } })
  materials.forEach((material, index) => {
    if (!binds(amounts[index]!, material.maxAmount)) return
    lifts.push({ kind: 'materialLimit', name: material.name, lifted: { ...bath, materials: materials.with(index, { ...material, maxAmount: Infinity }) } })
  })
  constituents.forEach(({ name }, index) => {
    const kind = materials.some(({ provides }) => (provides[index] ?? 0) > 0) ? 'noPureMaterial' : 'noMaterial'
    lifts.push({ kind, name, lifted: { ...bath, materials: [...materials, pureMaterial(bath, index)] } })
  })
  return lifts
}

const binds = (used: number, limit: number): boolean => used >= limit * (1 - 1e-9)

const pureMaterial = ({ constituents }: Bath, index: number): Bath['materials'][number] => ({
  name: '',
  gramsPerUnit: 1,
  provides: constituents.map((_, at) => (at === index ? 1 : 0)),
  displacesLitresPerUnit: 0,
  maxAmount: Infinity,
})
