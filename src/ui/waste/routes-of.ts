import type { Drums } from '../../projections/drums.ts'
import type { DataOf } from '../../record/kinds.ts'
import { drumsFor, type RunOffKind } from '../../safety/run-offs.ts'
import type { DrumAnswer, WasteDrum } from '../../safety/waste.ts'

export type Destination = DataOf<'runOff'>['destination']

export const keyOf = (it: Destination): string => (it.to === 'drum' ? `drum ${it.drum}` : it.to)

/** Where a run-off may go, and the drums into which it must never go, each with what would come of it. */
export const routesOf = (kind: RunOffKind, drums: Drums): { routes: Destination[]; refused: { drum: WasteDrum; why: Extract<DrumAnswer, { may: false }>['why'] }[] } => {
  const offered = drumsFor(kind, (drum) => Object.keys(drums[drum]?.litres ?? {}))
  return {
    routes: [...kind.routes.map((to): Destination => ({ to })), ...offered.filter(({ answer }) => answer.may).map(({ drum }): Destination => ({ to: 'drum', drum: drum.id }))],
    refused: offered.flatMap(({ drum, answer }) => (answer.may || answer.why === 'otherWaste' ? [] : [{ drum, why: answer.why }])),
  }
}
