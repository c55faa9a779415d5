import type { MiddlewareHandler } from 'hono'
import type { Parts } from '../parts.ts'
import type { Env } from './env.ts'

/** One line of log and one count for each request. Never what it carried. */
export const observe = (parts: Parts): MiddlewareHandler<Env> => async (c, next) => {
  const from = performance.now()
  await next()
  const ms = performance.now() - from
  const route = c.var.routeName ?? 'none'
  const labels = { route, method: c.req.method, status: c.res.status }
  parts.metrics.requests.add(labels)
  if (route !== 'live') parts.metrics.seconds.observe({ route }, ms / 1000)
  parts.log.info({ ...labels, ms: Math.round(ms * 10) / 10, address: c.var.client.address, dev: c.var.device?.dev }, 'request')
}
