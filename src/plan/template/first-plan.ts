import type { SayInWords } from '../in-words.ts'
import type { WrittenPlan } from '../written-plan.ts'
import { withTypicalMachine, type MachineWanted } from './machine.ts'

export interface FirstWanted {
  name: string
  timeZone: string
  units: WrittenPlan['units']
  people: WrittenPlan['people']
  shifts: WrittenPlan['shifts']
  emergency: WrittenPlan['emergency']
  machine: MachineWanted
}

/** Three shifts of eight hours; common practice, no source. */
export const typicalShifts: WrittenPlan['shifts'] = [
  { id: 'early', name: 'Early shift', from: '06:00', to: '14:00' },
  { id: 'late', name: 'Late shift', from: '14:00', to: '22:00' },
  { id: 'night', name: 'Night shift', from: '22:00', to: '06:00' },
]

/** The first plan of a laboratory: one machine of typical stations. Every aim in it is a starting value. */
export const firstPlan = ({ machine, ...of }: FirstWanted, say?: SayInWords): WrittenPlan =>
  withTypicalMachine({ format: 'bathkeeper-plan', version: 1, ...of, machines: [], checks: [], materials: [], methods: [] }, machine, say).plan
