import type { DisplayUnits } from '../../plan/lab-plan.ts'
import type { MachineWanted } from '../../plan/template/machine.ts'
import { typicalPathMetres } from '../../plan/template/machine.ts'
import { typicalStations } from '../../plan/template/stations.ts'
import { tidy } from '../../science/decimal.ts'
import { edgeUnits } from '../bench/edge-units.ts'
import { parseNumber } from '../bench/form.ts'

/** A machine as it is being keyed: numbers as text, in the laboratory's units. */
export interface MachineKeyed {
  name: string
  stock: MachineWanted['stock']
  light: MachineWanted['light']
  gauge: MachineWanted['gaugeMillimetres']
  speed: string
  stations: readonly string[]
  /** Keyed over the typical value; a station that is not here has that. */
  litres: Readonly<Record<string, string>>
  path: Readonly<Record<string, string>>
}

/** 100 feet a minute, in either unit; common practice, no source. */
export const usualSpeed = (units: DisplayUnits): string => (units.length === 'ft' ? '100' : '30.5')

export const freshMachine = (name: string, units: DisplayUnits): MachineKeyed => ({
  name, stock: 'negative', light: 'panchromatic', gauge: 35, speed: usualSpeed(units), stations: typicalStations.map(({ as }) => as), litres: {}, path: {},
})

const shown = (value: number): string => String(Number(value.toPrecision(4)))

/** What stands in the fields of a station while nothing was keyed. */
export const usualOf = (as: string, keyed: MachineKeyed, units: DisplayUnits): { litres?: string; path?: string } => {
  const station = typicalStations.find((it) => it.as === as)!
  const of = { stock: keyed.stock, metresPerMinute: speedOf(keyed, units) ?? 30.48 }
  const path = typicalPathMetres(station, of)
  const bath = station.bath?.(of)
  return { ...(path === undefined ? {} : { path: shown(edgeUnits(units)('m').toShown(path)) }), ...(bath ? { litres: shown(edgeUnits(units)('L').toShown(bath.litres)) } : {}) }
}

const positive = (text: string): number | undefined => {
  const value = parseNumber(text.trim())
  return value !== undefined && value > 0 ? value : undefined
}

const speedOf = ({ speed }: MachineKeyed, units: DisplayUnits): number | undefined => {
  const value = positive(speed)
  return value === undefined ? undefined : tidy(edgeUnits(units)('m/min').fromShown(value))
}

/** Fields that are not numbers yet, by `speed`, `litres.dev`, `path.dev`; and the machine where there are none. */
export const readMachine = (keyed: MachineKeyed, units: DisplayUnits): { bad: ReadonlySet<string>; wanted: MachineWanted | undefined } => {
  const bad = new Set<string>()
  const speed = speedOf(keyed, units)
  if (speed === undefined) bad.add('speed')
  if (!keyed.name.trim()) bad.add('name')
  if (!keyed.stations.length) bad.add('stations')
  const numbers = (kind: 'litres' | 'path', unit: string): Record<string, number> =>
    Object.fromEntries(
      Object.entries(keyed[kind]).filter(([as]) => keyed.stations.includes(as)).flatMap(([as, text]) => {
        const value = positive(text)
        if (value === undefined) bad.add(`${kind}.${as}`)
        return value === undefined ? [] : [[as, tidy(edgeUnits(units)(unit).fromShown(value))] as const]
      }),
    )
  const litres = numbers('litres', 'L')
  const pathMetres = numbers('path', 'm')
  if (bad.size || speed === undefined) return { bad, wanted: undefined }
  return { bad, wanted: { name: keyed.name.trim(), stock: keyed.stock, light: keyed.light, gaugeMillimetres: keyed.gauge, metresPerMinute: speed, stations: keyed.stations, litres, pathMetres } }
}
