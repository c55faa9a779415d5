import type { LabPlan } from '../plan/lab-plan.ts'
import type { WrittenPlan } from '../plan/written-plan.ts'
import type { Lab } from './lab.ts'
import { isInPlan } from './left-behind.ts'
import { walkDown, type WalkItem } from './walk-down.ts'

/** What a changed plan would leave behind at an instant: as the walk-down names it, and none of what was left behind before. */
export const wouldLeaveBehind = (lab: Lab, plan: LabPlan, changed: WrittenPlan, now: number): WalkItem[] =>
  walkDown(lab, plan, now).filter((item) => isHeldBy(lab, item, plan) && !isHeldBy(lab, item, changed))

const isHeldBy = ({ state, ledger }: Lab, item: WalkItem, plan: WrittenPlan | LabPlan): boolean => {
  const has = (list: readonly { id: string }[] | undefined, id: string): boolean => list?.some((it) => it.id === id) ?? false
  const hasStation = (id: string): boolean => plan.machines.some(({ stations }) => has(stations, id))
  const hasMaterial = (id: string): boolean => id === 'water' || has(plan.materials, id)
  switch (item.what) {
    case 'machine':
      // A machine that stands still holds nothing.
      return item.state === 'stopped' || has(plan.machines, item.ref)
    case 'hold':
      return has(plan.machines, item.machine)
    case 'exception': {
      const exception = state.exceptions.all[item.ref]
      return exception === undefined || (isInPlan(plan, exception) && (item.phase !== 'mixing' || exception.doses.every(({ material }) => hasMaterial(material))))
    }
    case 'mixing': {
      const line = ledger.line(item.ref)
      return hasStation(item.station) && (line?.kind !== 'add' || hasMaterial(line.data.material))
    }
    case 'batch': {
      const mix = state.mixes[item.ref]
      return hasStation(item.station) && (!mix || has(plan.formulas, mix.formula))
    }
    case 'late':
    case 'instrument':
      return true
  }
}
