import type { MiddlewareHandler } from 'hono'
import type { Env } from './env.ts'
import { Refused } from './refused.ts'

/**
 * No request is believed for a cookie, so another site has nothing to borrow; what comes from another site is refused all the same, before
 * anything else looks at it.
 */
export const refuseCrossSite: MiddlewareHandler<Env> = async (c, next) => {
  const site = c.req.header('sec-fetch-site')
  if (site !== undefined && site !== 'same-origin' && site !== 'none') throw new Refused('crossSite')
  const origin = c.req.header('origin')
  if (origin !== undefined) {
    const host = URL.canParse(origin) ? new URL(origin).host : undefined
    if (host !== c.var.client.host) throw new Refused('crossSite')
  }
  await next()
}
