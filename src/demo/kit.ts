import type * as z from 'zod/mini'
import type { lookCheck, readingCheck, stripCheck } from '../plan/check.ts'
import type { labPlan } from '../plan/lab-plan.ts'
import type { Limits } from '../plan/limits.ts'
import type { MachineState, Schedule } from '../plan/schedule.ts'

/** A lab plan as it is written down, before it is parsed. */
export type WrittenPlan = z.input<typeof labPlan>
export type WrittenCheck = WrittenPlan['checks'][number]

type Given<C> = Omit<C, 'kind' | 'setBy' | 'immediateHold' | 'states'> & { source: string; states?: MachineState[]; immediateHold?: true }

export const anyState: MachineState[] = ['startUp', 'running', 'standby', 'changeOver', 'shutDown', 'stopped']
const withFilm: MachineState[] = ['running']

/** Every value in the demo is a starting value, and every check speaks while film runs unless it says otherwise. */
const startingValue = <C extends { source: string; states?: MachineState[]; immediateHold?: true }>({ source, states = withFilm, immediateHold, ...rest }: C) => ({
  ...rest,
  states,
  immediateHold: immediateHold ?? false,
  setBy: { kind: 'startingValue' as const, source },
})

export const reading = (given: Given<z.input<typeof readingCheck>>): WrittenCheck => ({ kind: 'reading', ...startingValue(given) })
export const look = (given: Given<z.input<typeof lookCheck>>): WrittenCheck => ({ kind: 'look', ...startingValue(given) })
export const strip = (given: Given<z.input<typeof stripCheck>>): WrittenCheck => ({ kind: 'strip', ...startingValue(given) })

/** A wedge of half a stop a step, thinnest first, as relative log exposure below its last step: √2 a step is 0.15 (from memory). */
export const wedge = Array.from({ length: 21 }, (_, index) => ({ name: String(index + 1), logExposure: Number(((index - 20) * 0.15).toFixed(2)) }))

export const every = (minutes: number, graceMinutes: number): Schedule => ({ kind: 'interval', minutes, graceMinutes })
export const eachDay: Schedule = every(24 * 60, 120)
export const eachShift = (afterMinutes: number, graceMinutes = 60): Schedule => ({ kind: 'shift', afterMinutes, graceMinutes })
export const atEach = (graceMinutes: number): Schedule => ({ kind: 'state', graceMinutes })

/** Limits at equal distances on both sides of the aim, rounded as they would be written. */
export const around = (aim: number, warning: number, action: number): Limits => {
  const written = (value: number): number => Number(value.toPrecision(7))
  return { aim, warningLow: written(aim - warning), warningHigh: written(aim + warning), actionLow: written(aim - action), actionHigh: written(aim + action) }
}

export const instruments = {
  thermometer: { name: 'reference thermometer', low: -5, high: 60 },
  meter: { name: 'pH meter', low: 0, high: 14 },
  hydrometer: { name: 'hydrometer', low: 0.99, high: 1.2 },
  dipMark: { name: 'dip mark', low: -150, high: 50 },
  stopwatch: { name: 'stopwatch', low: 0, high: 600 },
  burette: { name: 'burette', low: 0, high: 400 },
} as const
