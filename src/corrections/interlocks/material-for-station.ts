import type { Interlock } from '../interlock.ts'
import { say } from '../say.ts'

/** Only what the plan lets into this bath. */
export const materialForStation: Interlock = ({ station, material }) =>
  material !== 'water' && !material.for.includes(station.id)
    ? { code: 'notForThisBath', facts: { material: material.id, station: station.id }, doFirst: say('doNotPour'), source: 'the laboratory’s plan' }
    : undefined
