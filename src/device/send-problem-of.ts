import type { SendProblem } from './problems.ts'
import type { DoorProblem } from './server-door.ts'

/** What the door says, as the page says it. */
export const sendProblemOf = (problem: DoorProblem): SendProblem => {
  if (problem.code !== 'refused') return problem
  const { error, detail, retryAfter } = problem.refusal
  switch (error) {
    case 'notConfirmed':
    case 'unauthorised':
    case 'revoked':
    case 'retired':
    case 'quarantined':
    case 'unknownVersion':
    case 'quota':
      return { code: error }
    case 'tooMany':
    case 'busy':
    case 'fault':
    case 'full':
    case 'timeout':
      return { code: 'busy', ...(retryAfter === undefined ? {} : { retryAfterSeconds: retryAfter }) }
    default:
      return { code: 'refused', error, ...(detail === undefined ? {} : { detail }) }
  }
}
