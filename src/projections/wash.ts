import type { LabPlan } from '../plan/lab-plan.ts'
import type { Machine } from '../plan/machine.ts'
import { resultOf } from '../science/evaluate.ts'
import { filmArea } from '../science/film/area.ts'
import { Refusal } from '../science/refusal.ts'
import { washCascade } from '../science/wash/cascade.ts'
import { washFlow } from '../science/wash/flow.ts'
import type { LabState } from './lab-state.ts'
import { spanAt } from './machines.ts'

export interface WashNow {
  machine: Machine
  litresPerMinute: number
  squareMetresPerMinute: number
  /** In the liquid that film brings in, by the last analysis of the last fixing bath, else its formula; and that it takes out. */
  inGramsPerLitre: number
  outGramsPerLitre: number
  /** What the water would do, shared out fresh to all tanks. */
  splitOutGramsPerLitre: number
  /** What the plan wants to be left, and the flow for it; absent where no flow gives that. */
  wantedGramsPerLitre: number
  neededLitresPerMinute?: number
}

/** How well each machine washes, from its stages, its carry-over and the flow that was read last. Machines of which something is not known are left out. */
export const washesNow = (state: LabState, plan: LabPlan, now: number): WashNow[] => {
  const given = plan.methods.find(({ calculation, given: it }) => calculation === washCascade.id && it)?.given ?? {}
  const { stages, carryLitresPerSquareMetre, outGramsPerLitre: wanted } = given
  if (typeof stages !== 'number' || typeof carryLitresPerSquareMetre !== 'number' || typeof wanted !== 'number') return []
  return plan.machines.flatMap((machine): WashNow[] => {
    const wash = machine.stations.find(({ kind }) => kind === 'wash')
    const fixing = machine.stations.findLast(({ kind }) => kind === 'fixing')
    const flow = wash && lastOf(state, plan, (it) => it.station === wash.id && it.quantity === 'flow', now)
    const thiosulfate =
      fixing &&
      (lastOf(state, plan, (it) => it.station === fixing.id && it.quantity === 'concentration' && it.of === 'sodiumThiosulfate', now) ??
        fixing.bath?.constituents.find(({ substance }) => substance === 'sodiumThiosulfate')?.gramsPerLitre)
    const speed = spanAt(state.machines[machine.id], now).metresPerMinute || machine.aimMetresPerMinute
    if (flow === undefined || thiosulfate === undefined) return []
    const { squareMetres } = resultOf(filmArea, { gaugeMillimetres: machine.gaugeMillimetres, metres: speed })
    const { outGramsPerLitre, splitOutGramsPerLitre } = resultOf(washCascade, {
      stages, carryLitresPerSquareMetre, washLitresPerSquareMetre: flow / squareMetres, inGramsPerLitre: thiosulfate,
    })
    const needed = neededFlow({ stages, carryLitresPerSquareMetre, inGramsPerLitre: thiosulfate, outGramsPerLitre: wanted, squareMetresPerMinute: squareMetres })
    return [
      {
        machine, litresPerMinute: flow, squareMetresPerMinute: squareMetres, inGramsPerLitre: thiosulfate, outGramsPerLitre, splitOutGramsPerLitre, wantedGramsPerLitre: wanted,
        ...(needed === undefined ? {} : { neededLitresPerMinute: needed }),
      },
    ]
  })
}

const neededFlow = (given: Parameters<typeof washFlow.run>[0]): number | undefined => {
  try {
    return resultOf(washFlow, given).litresPerMinute
  } catch (thrown) {
    if (thrown instanceof Refusal) return undefined
    throw thrown
  }
}

const lastOf = (state: LabState, plan: LabPlan, is: (check: { station: string; quantity: string; of?: string | undefined }) => boolean, now: number): number | undefined => {
  const check = plan.checks.find((it) => it.kind === 'reading' && is(it))
  return check && state.checks[check.id]?.recent.findLast(({ time, value }) => time <= now && value !== undefined)?.value
}
