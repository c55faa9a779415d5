import type { Quantity } from '../../plan/check.ts'
import type { Signs } from './signs.ts'

/** A reading that would speak for a suspect: where it lies, and on which side. */
export interface Witness {
  quantity: Quantity
  of?: readonly string[]
  /** Side that speaks for the suspect. */
  side: 'low' | 'high'
  /** Where the reading is taken; the developer where nothing is said. */
  at?: 'developer' | 'replenisher' | 'machine'
}

export interface Suspect {
  code: string
  /** What the strip would show. A figure that is not named may do anything. */
  signs?: Signs
  /** Seen on the film: streaks along it, a stain. A suspect with this is offered only where it was seen. */
  seen?: 'streaks' | 'yellowStain' | 'brownStain'
  witnesses?: readonly Witness[]
  /** It comes slowly, or at once. */
  course?: 'drift' | 'jump'
  /** How often it is the cause, before anything is known: the order of the checks in practice. */
  first: number
  source: string
}

const agents = ['metol', 'hydroquinone'] as const
const alkalis = ['borax', 'sodiumCarbonate', 'sodiumHydroxide'] as const

/**
 * What a deviation of the strip points to. Effects of two faults need not add up (a maker's control-strip data, 2000s), so these are suspects and never a
 * verdict. First figures of the order: US Navy Photography (Advanced) 14208: instrument, repeat strip, temperature, time, agitation, then mixing and
 * replenishment.
 */
export const suspects: readonly Suspect[] = [
  { code: 'tooWarm', signs: { speed: 'up', gamma: 'up' }, witnesses: [{ quantity: 'temperature', side: 'high' }], course: 'jump', first: 5, source: 'Film Archives On-Line sect. 10; US Navy 14208' },
  { code: 'tooCold', signs: { speed: 'down', gamma: 'down' }, witnesses: [{ quantity: 'temperature', side: 'low' }], course: 'jump', first: 5, source: 'Film Archives On-Line sect. 10; US Navy 14208' },
  { code: 'tooSlow', signs: { speed: 'up', gamma: 'up' }, witnesses: [{ quantity: 'speed', side: 'low', at: 'machine' }], course: 'jump', first: 4, source: 'Film Archives On-Line sect. 10; US Navy 14208' },
  { code: 'tooFast', signs: { speed: 'down', gamma: 'down' }, witnesses: [{ quantity: 'speed', side: 'high', at: 'machine' }], course: 'jump', first: 4, source: 'Film Archives On-Line sect. 10; US Navy 14208' },
  {
    code: 'overReplenished', signs: { speed: 'up' }, witnesses: [{ quantity: 'replenishment', side: 'high', at: 'replenisher' }, { quantity: 'concentration', of: agents, side: 'high' }], course: 'drift', first: 2,
    source: 'US Navy 14208; a maker’s control-strip table',
  },
  {
    code: 'underReplenished', signs: { speed: 'down' },
    witnesses: [{ quantity: 'replenishment', side: 'low', at: 'replenisher' }, { quantity: 'concentration', of: agents, side: 'low' }], course: 'drift', first: 3,
    source: 'US Army SS0509: activity sinks over a long run, speed first',
  },
  {
    code: 'tooStrong', signs: { gamma: 'up' }, witnesses: [{ quantity: 'specificGravity', side: 'high' }, { quantity: 'level', side: 'low' }, { quantity: 'concentration', of: agents, side: 'high' }], first: 2,
    source: 'a maker’s control-strip table: contrast up',
  },
  {
    code: 'diluted', signs: { gamma: 'down' }, witnesses: [{ quantity: 'specificGravity', side: 'low' }, { quantity: 'level', side: 'high' }, { quantity: 'concentration', of: agents, side: 'low' }], first: 2,
    source: 'a maker’s control-strip table: contrast down',
  },
  { code: 'underAgitated', signs: { gamma: 'down' }, witnesses: [{ quantity: 'flow', side: 'low' }], first: 2, source: 'a maker’s control-strip table; US Navy 14208' },
  { code: 'oxidised', signs: { gamma: 'down', fog: 'up' }, witnesses: [{ quantity: 'concentration', of: ['sodiumSulfite'], side: 'low' }], course: 'drift', first: 1, source: 'a maker’s control-strip table; from memory' },
  { code: 'bromideHigh', signs: { speed: 'down', fog: 'down' }, witnesses: [{ quantity: 'concentration', of: ['potassiumBromide'], side: 'high' }], course: 'drift', first: 2, source: 'US Army SS0509; the pattern from memory' },
  { code: 'bromideLow', signs: { speed: 'up', fog: 'up' }, witnesses: [{ quantity: 'concentration', of: ['potassiumBromide'], side: 'low' }], first: 1, source: 'from memory' },
  {
    code: 'phHigh', signs: { speed: 'up', fog: 'up' }, witnesses: [{ quantity: 'pH', side: 'high' }, { quantity: 'concentration', of: alkalis, side: 'high' }], first: 2, source: 'from memory',
  },
  {
    code: 'phLow', signs: { speed: 'down', gamma: 'down', fog: 'down' }, witnesses: [{ quantity: 'pH', side: 'low' }, { quantity: 'concentration', of: alkalis, side: 'low' }], first: 2, source: 'from memory: acid carried in, or alkali short',
  },
  { code: 'lightOrOldStock', signs: { fog: 'up', speed: 'same', gamma: 'same' }, first: 3, source: 'US Navy 14208; Wheeler 1953, p. 110' },
  { code: 'sulfideFog', signs: { fog: 'up', speed: 'same', gamma: 'same' }, first: 1, source: 'Wheeler 1953, p. 110: sulfide after a standstill' },
  { code: 'circulation', seen: 'streaks', witnesses: [{ quantity: 'flow', side: 'low' }], first: 6, source: 'Wheeler 1953, p. 110' },
  { code: 'oxidisedStain', seen: 'yellowStain', witnesses: [{ quantity: 'concentration', of: ['sodiumSulfite'], side: 'low' }], first: 6, source: 'Wheeler 1953, p. 110: clean yellow stain' },
  { code: 'weakFixing', seen: 'brownStain', first: 6, source: 'Wheeler 1953, p. 110: dirty brown stain, silver left by weak fixing' },
]
