import type { LabPlan } from '../plan/lab-plan.ts'
import type { Station } from '../plan/machine.ts'
import type { LabState } from '../projections/lab.ts'
import type { Substance } from '../science/substances.ts'
import type { Form } from '../science/substances-table.ts'
import { thingsOf, type Thing } from '../safety/things.ts'
import { foundBy, isCurrent, readingsAt, type Found } from './lookup.ts'

/** Whether the station holds a fixing bath: by its kind, or because thiosulfate is in it. */
export const isFixing = ({ kind, bath }: Station): boolean => kind === 'fixing' || holds(bath, 'thiosulfate')
export const isDeveloper = ({ kind, bath }: Station): boolean => kind === 'developer' || (!holds(bath, 'thiosulfate') && holds(bath, 'developer'))
export const hasAlum = ({ bath }: Station): boolean => holds(bath, 'alum')

const holds = (bath: Station['bath'], thing: Thing): boolean => (bath?.constituents ?? []).some(({ substance }) => thingsOf(substance).includes(thing))

/**
 * What a bath counts as in the table of pairs. Acid in an acid bath is there diluted and buffered; the little acid that a developer's
 * formula lists has been used up by its alkali and does not count.
 */
export const thingsIn = (station: Station): readonly Thing[] => {
  const things = new Set<Thing>(isFixing(station) ? ['thiosulfate'] : isDeveloper(station) ? ['developer', 'sulfite'] : [])
  for (const { substance } of station.bath?.constituents ?? [])
    for (const thing of thingsOf(substance)) if (!['acid', 'strongAcid', 'diluteAcid'].includes(thing)) things.add(thing)
  const acidic = (station.bath?.constituents ?? []).some(({ substance }) => thingsOf(substance).includes('acid'))
  if ((isFixing(station) || station.kind === 'stop') && acidic) things.add('diluteAcid')
  return [...things]
}

export interface ConstituentNow {
  substance: Substance
  form?: Form
  gramsPerLitre: number
}

/**
 * The bath as the acid–base engine takes it: the plan's composition, and for each constituent that was titrated within its interval the
 * strength that was found. Substances and forms were checked when the plan was taken in.
 */
export const bathNow = (lab: LabState, plan: LabPlan, station: Station, now: number): ConstituentNow[] =>
  (station.bath?.constituents ?? []).map((it) => {
    const found = concentrationAt(lab, plan, station, it.substance, now)
    return {
      substance: it.substance as Substance,
      ...(it.form ? { form: it.form as Form } : {}),
      gramsPerLitre: found ? found.value : it.gramsPerLitre,
    }
  })

/** The strength of a constituent as last titrated, if that still speaks. */
export const concentrationAt = (lab: LabState, plan: LabPlan, station: Station, substance: string, now: number): Found | undefined => {
  for (const check of readingsAt(plan, station.id, 'concentration', substance)) {
    if (check.unit !== 'g/L') continue
    const found = foundBy(lab, check, now)
    if (found && isCurrent(lab, plan, check, found.mark, now)) return found
  }
  return undefined
}
