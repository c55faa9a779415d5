import { acid } from '../remedies/acid.ts'
import { sulfiteWhereShort } from '../remedies/sulfite.ts'
import type { Row } from '../row.ts'

export const fixingPhHigh: Row = {
  code: 'fixingPhHigh',
  when: { at: ['fixing'], quantity: 'pH', side: 'high' },
  lookFirst: ['developerCarryOver', 'rinseFlow'],
  then: ['restoreRinse', sulfiteWhereShort, acid],
  recheck: { turnovers: 3, minutes: 10 },
  hold: { when: 'beyond', above: 5.2, unit: 'pH' },
  source: 'Crabtree and Hartt 1929; Eastman Kodak TI2497; numbers from memory',
}
