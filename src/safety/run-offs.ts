import { mayGoInto, wasteDrums, type DrumAnswer, type WasteDrum } from './waste.ts'
import type { Thing } from './things.ts'

/** What leaves a bath or the bench for good, and by which routes it may. */
export interface RunOffKind {
  id: string
  things: readonly Thing[]
  /** `recovery`: to the silver cell or its tank. `drain`: only where the site's permit lists it. A drum is asked apart. */
  routes: readonly ('recovery' | 'drain')[]
}

/**
 * The run-offs of a film laboratory. Silver never goes to the drain; solvent, titration waste and chromium only into their drums. Which of the
 * rest may go to the drain is for the site's permit to say: common practice, no source.
 */
export const runOffKinds: readonly RunOffKind[] = [
  { id: 'usedFixing', things: ['thiosulfate', 'sulfite', 'silverSolution'], routes: ['recovery'] },
  { id: 'firstWash', things: ['thiosulfate', 'sulfite', 'silverSolution'], routes: ['recovery'] },
  { id: 'plateRinse', things: ['silverSolution'], routes: ['recovery'] },
  { id: 'developer', things: ['developer', 'sulfite'], routes: ['drain'] },
  { id: 'stop', things: ['acid', 'diluteAcid'], routes: ['drain'] },
  { id: 'desilvered', things: ['thiosulfate', 'sulfite'], routes: ['drain'] },
  { id: 'acidTitration', things: ['acid', 'diluteAcid'], routes: [] },
  { id: 'iodineTitration', things: ['iodine'], routes: [] },
  { id: 'silverTitration', things: ['silverSolution', 'oxidiser'], routes: [] },
  { id: 'etherExtraction', things: ['ether', 'flammableSolvent', 'organics'], routes: [] },
  { id: 'solventExtraction', things: ['flammableSolvent', 'organics'], routes: [] },
  { id: 'filmCleaner', things: ['chlorinatedSolvent'], routes: [] },
  { id: 'hypochlorite', things: ['hypochlorite', 'oxidiser'], routes: [] },
  { id: 'sulfideTest', things: ['sulfide'], routes: [] },
  { id: 'chromium', things: ['dichromate', 'oxidiser'], routes: [] },
]

export const runOffKind = (id: string): RunOffKind | undefined => runOffKinds.find((it) => it.id === id)

export interface DrumOffered {
  drum: WasteDrum
  answer: DrumAnswer
}

/**
 * Every drum with its answer: by what it is for, and by what has gone into it since it was last empty. A drum is for this waste only where it names all
 * of it: what merely does no harm is still in the wrong drum.
 */
export const drumsFor = (kind: RunOffKind, inDrum: (drum: string) => readonly string[]): DrumOffered[] =>
  wasteDrums.map((drum) => {
    const answer = mayGoInto(drum, kind.things)
    if (!answer.may) return { drum, answer }
    for (const other of inDrum(drum.id)) {
      const there = runOffKind(other)
      const met = there && mayGoInto({ ...drum, holds: there.things }, kind.things)
      if (met && !met.may && met.why !== 'keptAlone') return { drum, answer: met }
    }
    return { drum, answer: kind.things.every((thing) => drum.holds.includes(thing)) ? answer : { may: false, why: 'otherWaste' } }
  })
