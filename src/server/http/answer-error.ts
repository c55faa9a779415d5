import type { ErrorHandler } from 'hono'
import { nonceHeader } from '../../wire/auth.ts'
import { faultOfDatabase } from '../database/fault.ts'
import type { Parts } from '../parts.ts'
import type { Env } from './env.ts'
import type { Nonces } from './nonces.ts'
import { Refused, statusOf } from './refused.ts'

/** The one place where a refusal or a fault becomes an answer. Of a fault the asker learns only that there was one. */
export const answerError = (parts: Parts, nonces: Nonces): ErrorHandler<Env> => (error, c) => {
  const refused = error instanceof Refused ? error : new Refused(faultOfDatabase(error))
  const { answer } = refused
  if (!(error instanceof Refused)) parts.log.error({ err: error, route: c.var.routeName, dev: c.var.device?.dev }, 'fault')
  parts.metrics.refusals.add({ code: answer.error })
  if (answer.retryAfter !== undefined) c.header('Retry-After', String(answer.retryAfter))
  if (c.var.device) c.header(nonceHeader, nonces.give())
  c.header('Cache-Control', 'no-store')
  return c.json(answer, statusOf[answer.error])
}
