import { tidy } from '../../science/decimal.ts'
import { housePlaces } from '../copy-machine.ts'
import { inWords, type SayInWords } from '../in-words.ts'
import { idsOf, newId } from '../new-id.ts'
import type { WrittenCheck, WrittenMachine, WrittenPlan, WrittenStation } from '../written-plan.ts'
import type { Typical, TypicalCheck, TypicalStation } from './kit.ts'
import { typicalMaterials } from './materials.ts'
import { typicalStations } from './stations.ts'

export interface MachineWanted {
  name: string
  stock: Typical['stock']
  light: WrittenMachine['light']
  gaugeMillimetres: WrittenMachine['gaugeMillimetres']
  metresPerMinute: number
  /** `as` of the stations that it has; in the order of the list of typical stations. */
  stations: readonly string[]
  /** What is known better than the template's: litres of a bath, the film's path. */
  litres?: Readonly<Record<string, number>>
  pathMetres?: Readonly<Record<string, number>>
}

export const typicalPathMetres = (station: TypicalStation, of: Typical): number | undefined => station.minutes && tidy(Number((station.minutes(of) * of.metresPerMinute).toPrecision(6)))

/**
 * The plan with one more machine, made of typical stations and their checks with starting values. Places of the house (safety stations, instruments,
 * silver cell) are made with the first machine that asks for them, and a material that the plan has is permitted in the new baths as well. `say` puts what
 * is new into the words of a language.
 */
export const withTypicalMachine = (plan: WrittenPlan, wanted: MachineWanted, say: SayInWords = (english) => english): { plan: WrittenPlan; machine: string } => {
  const taken = idsOf(plan)
  const take = (name: string): string => {
    const id = newId(name, taken, 'machine')
    taken.add(id)
    return id
  }
  const of: Typical = { stock: wanted.stock, metresPerMinute: wanted.metresPerMinute }
  const id = take(wanted.name)
  const hasAlready = (station: TypicalStation): boolean => housePlaces.has(station.kind) && plan.machines.some(({ stations }) => stations.some(({ kind }) => kind === station.kind))
  const chosen = typicalStations.filter((station) => wanted.stations.includes(station.as) && !hasAlready(station))
  const stationIds = new Map(chosen.map(({ as }) => [as, take(`${id}-${as}`)]))
  const stations = new Map(chosen.map((station) => [station, stationOf(station, stationIds.get(station.as)!, of, wanted)]))
  const all = chosen.flatMap((station) => station.checks(of, stations.get(station)!.bath).map((check) => ({ station, check, id: take(`${stationIds.get(station.as)}-${check.as}`) })))
  const checkIds = new Map(all.map((it) => [`${it.station.as}.${it.check.as}`, it.id]))
  const machine: WrittenMachine = {
    id, name: wanted.name, stock: wanted.stock, light: wanted.light, gaugeMillimetres: wanted.gaugeMillimetres, aimMetresPerMinute: wanted.metresPerMinute,
    stations: inWords([...stations.values()], say),
  }
  return {
    machine: id,
    plan: {
      ...plan,
      machines: [...plan.machines, machine],
      checks: [...plan.checks, ...inWords(all.map((it) => checkOf(it.check, it.id, stationIds.get(it.station.as)!, checkIds)), say)],
      materials: withMaterials(plan.materials, machine, say),
    },
  }
}

const stationOf = (station: TypicalStation, id: string, of: Typical, { litres = {}, pathMetres = {} }: MachineWanted): WrittenStation => {
  const path = pathMetres[station.as] ?? typicalPathMetres(station, of)
  const bath = station.bath?.(of)
  const volume = litres[station.as]
  const share = bath && volume !== undefined ? volume / bath.litres : 1
  const inShare = (value: number): number => Number((value * share).toPrecision(2))
  return {
    id, name: station.name, short: station.short, kind: station.kind,
    ...(path === undefined ? {} : { pathMetres: path }),
    // Headroom and circulation in proportion, until they are measured.
    ...(bath ? { bath: volume === undefined ? bath : { ...bath, litres: volume, headroomLitres: inShare(bath.headroomLitres), circulationLitresPerMinute: inShare(bath.circulationLitresPerMinute) } } : {}),
  }
}

const checkOf = ({ as: _, source, states = ['running'], immediateHold, pairedWith, ...rest }: TypicalCheck, id: string, station: string, checkIds: ReadonlyMap<string, string>): WrittenCheck => {
  const partner = pairedWith === undefined ? undefined : checkIds.get(pairedWith)
  return { ...rest, id, station, states, immediateHold: immediateHold ?? false, setBy: { kind: 'startingValue', source }, ...(partner ? { pairedWith: partner } : {}) } as WrittenCheck
}

const withMaterials = (materials: WrittenPlan['materials'], machine: WrittenMachine, say: SayInWords): WrittenPlan['materials'] => {
  const into = (kinds: readonly string[]): string[] => machine.stations.filter(({ kind, bath }) => bath && kinds.includes(kind)).map(({ id }) => id)
  const fitting = typicalMaterials.filter(({ only }) => only === undefined || only === machine.stock)
  const fresh = fitting.filter(({ id }) => !materials.some((known) => known.id === id))
  return [
    ...materials.map((known) => {
      const typical = fitting.find(({ id }) => id === known.id)
      return typical ? { ...known, for: [...known.for, ...into(typical.into)] } : known
    }),
    ...fresh.map(({ into: kinds, only: _, ...material }) => ({ ...inWords(material, say), for: into(kinds) })).filter((material) => material.for.length > 0),
  ]
}
