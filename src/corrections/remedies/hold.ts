import type { Builder } from '../row.ts'
import { say } from '../say.ts'
import { act } from './act.ts'
import { destinationOf } from './composition.ts'

/** Production kept off the machine: stop feeding, run leader, tag every roll since the last good check. */
export const holdMachine: Builder = (situation, row) => [
  act(situation, row, { code: 'hold', says: say('holdMachine'), how: [say('stopFeeding'), say('runLeaderThrough'), say('tagFilmAtRisk'), say('tellSupervisor')] }),
]

/** A bath that is beyond mending. */
export const replaceBath: Builder = (situation, row) => [
  act(situation, row, {
    code: 'replaceBath',
    says: say('replaceBath', { destination: destinationOf(situation) }),
    how: [say('logRunOff', { destination: destinationOf(situation) }), say('cleanTankAndLines'), say('newBathCertified'), say('closeWithBathReplaced')],
  }),
]
