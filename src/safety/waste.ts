import { mayMeet, type PairResult } from './pairs.ts'
import type { Thing } from './things.ts'

/** Drums of the bench and the machine room. What goes into one drum stays together for weeks: nothing may meet there, however slowly. */
export interface WasteDrum {
  id: string
  name: string
  holds: readonly Thing[]
  says: string
  /** Takes what it is for and nothing else. */
  alone?: true
}

export const wasteDrums: readonly WasteDrum[] = [
  { id: 'silverBearing', name: 'Fixing bath and other silver waste', holds: ['thiosulfate', 'sulfite', 'silverSolution'], says: 'To silver recovery, never to the drain. No acid: it throws sulfur.' },
  { id: 'acid', name: 'Acid waste', holds: ['acid', 'diluteAcid', 'strongAcid'], says: 'Never hypochlorite, never sulfide, never fixing bath.' },
  { id: 'alkali', name: 'Alkali and developer waste', holds: ['hydroxide', 'carbonate', 'developer', 'sulfite'], says: 'Never acid.' },
  { id: 'hypochlorite', name: 'Hypochlorite', holds: ['hypochlorite', 'oxidiser'], says: 'By itself: never with acid, ammonia, fixing bath or solvent.', alone: true },
  { id: 'ether', name: 'Ether', holds: ['ether', 'flammableSolvent', 'organics'], says: 'Nothing else goes in. Vented cap, cool, dated, away from every spark; no phone.', alone: true },
  { id: 'flammable', name: 'Flammable solvents', holds: ['flammableSolvent', 'organics'], says: 'No ether, no oxidiser, no acid.' },
  { id: 'chlorinated', name: 'Chlorinated solvents', holds: ['chlorinatedSolvent'], says: 'Apart from flammable solvents and alkali; to licensed disposal.' },
  { id: 'iodine', name: 'Iodine titrations', holds: ['iodine'], says: 'Never ammonia. Spent with thiosulfate first.' },
  { id: 'silverTitration', name: 'Silver nitrate titrations', holds: ['silverSolution', 'oxidiser'], says: 'Never ammonia; never left standing with it.' },
  { id: 'sulfide', name: 'Sulfide test', holds: ['sulfide'], says: 'Never acid: hydrogen sulfide.', alone: true },
  { id: 'chromium', name: 'Chrome alum, dichromate', holds: ['dichromate', 'oxidiser', 'alum'], says: 'Collected for licensed disposal, never to the drain.', alone: true },
]

export type DrumAnswer = { may: true } | { may: false; why: PairResult | 'keptAlone' | 'etherDrum' | 'otherWaste' }

/** Whether a waste may go into a drum. `slowly` is for doses into a bath; in a drum it counts as never. */
export const mayGoInto = (drum: WasteDrum, waste: readonly Thing[]): DrumAnswer => {
  const meeting = mayMeet(waste, drum.holds)
  if (meeting.may !== 'meet') return { may: false, why: meeting.result }
  if (drum.id === 'ether' && !waste.includes('ether')) return { may: false, why: 'etherDrum' }
  if (drum.alone && !waste.every((thing) => drum.holds.includes(thing))) return { may: false, why: 'keptAlone' }
  return waste.includes('ether') && drum.id !== 'ether' ? { may: false, why: 'etherDrum' } : { may: true }
}
