import { debyeHuckelConstant, type ActivityModel } from './activity.ts'
import { acids, borates, water, type AcidFacts, type AcidSystem } from './constants.ts'
import { pKAt } from './pk-at.ts'

/** `monomers` counts B(OH)₃ and B(OH)₄⁻ only; `polymers` adds the dimer and the trimer. */
export type BorateModel = 'monomers' | 'polymers'

export const borateModels: readonly BorateModel[] = ['monomers', 'polymers']

export const acidOrder = Object.keys(acids) as AcidSystem[]
export const boricIndex = acidOrder.indexOf('boric')

/** Everything that temperature and the choice of model fix, worked out once a calculation. */
export interface Medium {
  activity: ActivityModel
  /** Debye–Hückel A. */
  a: number
  pKw: number
  /** In `acidOrder`. */
  systems: readonly { topCharge: number; pKs: readonly number[] }[]
  /** Empty when only monomers are counted. */
  polymers: readonly { borons: number; pK: number }[]
}

export const mediumAt = ({ celsius, activity, borate }: { celsius: number; activity: ActivityModel; borate: BorateModel }): Medium => ({
  activity,
  a: debyeHuckelConstant(celsius),
  pKw: pKAt(water, celsius),
  systems: acidOrder.map((system) => {
    const { topCharge, steps }: AcidFacts = acids[system]
    return { topCharge, pKs: steps.map((step) => pKAt(step, celsius)) }
  }),
  polymers: borate === 'polymers' ? borates.map((it) => ({ borons: it.borons, pK: pKAt(it, celsius) })) : [],
})
