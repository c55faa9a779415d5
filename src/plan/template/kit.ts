import type { StationKind } from '../machine.ts'
import type { MachineState, Schedule } from '../schedule.ts'
import type { WrittenCheck, WrittenStation } from '../written-plan.ts'

/**
 * Starting values by which a laboratory may begin before it has its own: values of the trade, not specifications. Each check carries where its values come
 * from and stays labelled as a starting value until somebody sets an aim. Titles of the sources as they are shown.
 */
export const sources = {
  commonPractice: 'common practice, no source',
  fromMemory: 'from memory',
  archiveTraining: 'training text for film archives, c. 2000, section 9',
  printFilmSheet: 'maker’s data sheet for a black-and-white print film, 1999',
  colourPrintManual: 'manual of a colour print process, 2006, as an analogue',
  armyProcessors: 'US Army course on film processors',
  navyControl: 'US Navy course on process control',
  navyBasic: 'US Navy course in photography',
  fixingPaper: 'Society paper on fixing baths, 1929',
  navySilver: 'US Navy course, silver recovery',
  hazardsBook: 'handbook of photographic processing hazards',
} as const

export const and = (...names: string[]): string => names.join('; ')

/** What a typical station depends on. */
export interface Typical {
  stock: 'negative' | 'positive'
  metresPerMinute: number
}

type Loose<C> = C extends unknown ? Omit<C, 'id' | 'station' | 'setBy' | 'states' | 'immediateHold' | 'pairedWith'> : never

/** A check of a station that has no ids yet. */
export type TypicalCheck = Loose<WrittenCheck> & {
  /** Its name within the station: the id is made of both. */
  as: string
  source: string
  states?: MachineState[]
  immediateHold?: true
  /** `as` of the check that it is judged with, of the same machine: `developer.temp`. */
  pairedWith?: string
}

export interface TypicalStation {
  kind: StationKind
  /** Last word of its id, and what pairs name it by. */
  as: string
  name: string
  short: string
  /** How long the film is in it: its path follows from the speed. */
  minutes?: (of: Typical) => number
  bath?: (of: Typical) => NonNullable<WrittenStation['bath']>
  /** `bath` as the machine will have it: its circulation is the aim of a check. */
  checks: (of: Typical, bath: WrittenStation['bath']) => TypicalCheck[]
}

export const every = (minutes: number, graceMinutes: number): Schedule => ({ kind: 'interval', minutes, graceMinutes })
export const eachDay: Schedule = every(24 * 60, 120)
export const eachShift = (afterMinutes: number, graceMinutes = 60): Schedule => ({ kind: 'shift', afterMinutes, graceMinutes })
export const atEach = (graceMinutes: number): Schedule => ({ kind: 'state', graceMinutes })
export const anyState: MachineState[] = ['startUp', 'running', 'standby', 'changeOver', 'shutDown', 'stopped']

const written = (value: number): number => Number(value.toPrecision(6))

/** Limits at equal distances on both sides of the aim, rounded as they would be written. */
export const around = (aim: number, warning: number, action: number) => ({
  aim: written(aim), warningLow: written(aim - warning), warningHigh: written(aim + warning), actionLow: written(aim - action), actionHigh: written(aim + action),
})
export const atLeast = (aim: number, warning: number, action: number) => ({ aim: written(aim), warningLow: written(warning), actionLow: written(action) })
