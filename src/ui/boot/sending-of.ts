import type { SendState } from '../../device/sender.ts'
import { isLasting } from '../../device/problems.ts'
import type { Sending } from '../app-context.ts'

/** How the sender stands, as the screens show it. Photos wait behind their entries and are not counted. */
export const sendingOf = ({ isRunning, waiting, toCome, oldestAt, concern, problem }: SendState): Sending => ({
  waiting,
  toCome,
  oldestAt,
  concern,
  state: isRunning ? 'sending' : !problem ? 'idle' : problem.code === 'unreachable' || problem.code === 'timeout' || problem.code === 'busy' ? 'offline' : isLasting(problem) ? 'stopped' : 'offline',
  problem: problem?.code,
  isLasting: problem !== undefined && isLasting(problem),
})
