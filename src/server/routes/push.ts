import { push as takeIn } from '../ingest/push.ts'
import { Refused } from '../http/refused.ts'
import type { Parts } from '../parts.ts'
import type { Handler } from './given.ts'
import type { Pushed } from '../ingest/push.ts'

export const countPushed = ({ metrics }: Parts, { stored, repeated }: Pushed): void => {
  for (const status of stored) metrics.stored.add({ status })
  if (repeated) metrics.repeated.add({}, repeated)
}

export const push: Handler<'push'> = async ({ parts, device, request }) => {
  if (request.dev !== device.dev) throw new Refused('forbidden', { detail: 'dev' })
  const pushed = await takeIn(parts, device.dev, request)
  countPushed(parts, pushed)
  return pushed.answer
}
