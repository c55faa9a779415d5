import { shifts, summary, tanks, type Lot, type Policy, type Summary } from '../simulate/baths.ts'
import type { Figure } from './figure.ts'

/** Shifts by which nothing was chosen, as in the long test. */
const from = 500_001

const percent = (share: number): string => `${(share * 100).toFixed(1)} %`
const lots: readonly (readonly [Lot, string])[] = [['right', 'right lot'], ['halfStrength', 'lot of half strength'], ['doubleStrength', 'lot of double strength'], ['water', 'lot is water']]

/** Modelled shifts: what the product does, against the same shifts with single full doses and no learning. */
export const bathsAgainstFullDoses = (runs: number): Figure[] =>
  tanks.flatMap((tank) =>
    lots.map(([lot, words]): Figure => {
      const of = (policy: Policy): Summary => summary(shifts(tank, policy, { runs, lot, from }))
      const staged = of('stagedAndLearned')
      const full = of('singleFullDoses')
      const is = lot === 'right'
      return {
        what: `${tank.name}, ${words}: ${is ? 'in limits within three portions' : 'stopped'} (${runs} shifts)`,
        figure: percent(is ? staged.withinThree : staged.stopped),
        against: `single full doses, nothing learned: ${is ? `${percent(full.withinThree)}, thrown past the limit ${percent(full.leftLimitsBelow)} of times (staged ${percent(staged.leftLimitsBelow)})` : `never stopped, past the limit ${percent(full.leftLimitsBelow)} of times (staged ${percent(staged.leftLimitsBelow)})`}`,
        ratio: null,
        goal: is ? '≥ 95 %' : 'stopped, not learned',
        isMet: is ? staged.withinThree >= 0.95 : staged.stopped >= 0.95,
        ...(is || staged.stopped >= 0.95 ? {} : { note: `learned as within the bounds ${percent(staged.learned)}, the rest not told yet after three excursions` }),
      }
    }),
  )
