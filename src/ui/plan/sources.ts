import type { WrittenPlan } from '../../plan/written-plan.ts'
import { cards } from '../../safety/cards.ts'
import { catalogue } from '../../science/catalogue.ts'
import type { Field } from '../../science/field.ts'
import { substances } from '../../science/substances-table.ts'
import type { Source } from './field.ts'

export interface Option {
  value: string
  says: string
}

/** A name is not parted from its number, nor a dot from what it follows. */
export const unbroken = (names: string): string => names.replaceAll(/ (?=\d|·)/g, '\u00a0')

/** Units that instruments of the trade show, as the demo and most meters print them. */
const commonUnits = ['°C', '°F', 'pH', 'mm', 'SG', 'L/min', 'US gal/min', 'm/min', 'ft/min', 'g/L', 'mg/L', 'bar', 'kPa', 's', 'min', '%', 'A', 'V', 'Hz', 'm/s', 'L', 'm', 'ft', 'D', 'log E', '1']

/** The inputs of a calculation, by their meaning. */
export const inputsOf = (calculation: unknown): Option[] =>
  Object.entries<Field>(catalogue.find(({ id }) => id === calculation)?.inputs ?? {}).map(([value, { says }]) => ({ value, says }))

/** What a field may pick from: parts of the plan as it is being edited, and lists of the app. */
export const optionsOf = (plan: WrittenPlan, source: Source): Option[] => {
  const named = (list: readonly { id: string; name: string }[]): Option[] => list.map(({ id, name }) => ({ value: id, says: name }))
  const places = (isMeant: (station: WrittenPlan['machines'][number]['stations'][number]) => boolean): Option[] =>
    plan.machines.flatMap((machine) => machine.stations.filter(isMeant).map(({ id, name }) => ({ value: id, says: plan.machines.length > 1 ? `${machine.name} · ${name}` : name })))
  switch (source) {
    case 'stations':
      return places(() => true)
    case 'baths':
      return places(({ bath, kind }) => bath !== undefined || kind === 'replenisher')
    case 'checks': {
      const stations = new Map(optionsOf(plan, 'stations').map(({ value, says }) => [value, says]))
      return plan.checks.filter(({ kind }) => kind === 'reading').map(({ id, name, station }) => ({ value: id, says: `${stations.get(station) ?? station} · ${name}` }))
    }
    case 'materials':
    case 'methods':
    case 'people':
      return named(plan[source])
    case 'cards':
      return named([...(plan.cautions ?? []).filter(({ addsTo }) => addsTo === undefined), ...cards])
    case 'builtInCards':
      return named(cards)
    case 'substances':
      return Object.entries(substances).map(([value, { name }]) => ({ value, says: name }))
    case 'calculations':
      return catalogue.map(({ id, title }) => ({ value: id, says: title }))
    case 'figures':
      return ['baseFog', 'speed', 'gamma', 'averageGradient', 'dMax', 'contrast'].map((value) => ({ value, says: value }))
    case 'units':
      return commonUnits.map((value) => ({ value, says: value }))
  }
}
