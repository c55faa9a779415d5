import { Hono } from 'hono'
import { api } from './http/api.ts'
import { clientOf, proxyList } from './http/address.ts'
import { refuseCrossSite } from './http/cross-site.ts'
import type { Env } from './http/env.ts'
import { frontEnd } from './http/front-end.ts'
import { answerError } from './http/answer-error.ts'
import { Nonces } from './http/nonces.ts'
import { securityHeaders } from './http/security-headers.ts'
import { observe } from './http/observe.ts'
import { gauges } from './gauges.ts'
import { readReach } from './database/head.ts'
import { openApi } from './openapi.ts'
import { planSchema } from './plan-schema.ts'
import { sameText } from './keys.ts'
import type { Parts } from './parts.ts'
import { Refused } from './http/refused.ts'

/** The whole server, without a port. */
export const createApp = (parts: Parts): Hono<Env> => {
  const app = new Hono<Env>()
  const proxies = proxyList(parts.trustedProxies)
  const ownMachine = proxyList(['loopback'])
  const nonces = new Nonces(parts)

  app.use(async (c, next) => {
    c.set('client', clientOf(c, proxies, parts.isHttps))
    await next()
  })
  app.use(observe(parts))
  app.use(securityHeaders)
  app.onError(answerError(parts, nonces))
  app.on(['POST', 'PUT', 'PATCH', 'DELETE'], '*', refuseCrossSite)

  app.get('/healthz', async (c) => {
    c.set('routeName', 'healthz')
    const { gseq } = await readReach(parts.database.sql)
    return c.json({ ok: true, gseq, version: parts.version }, 200, { 'Cache-Control': 'no-store' })
  })
  app.get('/metrics', async (c) => {
    c.set('routeName', 'metrics')
    const { address } = c.var.client
    const isOwn = address !== '' && ownMachine.check(address, address.includes(':') ? 'ipv6' : 'ipv4')
    const bearer = c.req.header('authorization')?.replace(/^Bearer /, '') ?? ''
    const isKnown = parts.metricsToken !== undefined && sameText(bearer, parts.metricsToken)
    if (!isOwn && !isKnown) throw new Refused('forbidden')
    return c.text(parts.metrics.text(await gauges(parts)), 200, { 'Content-Type': 'text/plain; version=0.0.4; charset=utf-8' })
  })
  app.get('/ca.pem', (c) => {
    c.set('routeName', 'authority')
    const pem = parts.authorityCertificate()
    if (pem === undefined) throw new Refused('notFound')
    return c.body(pem, 200, { 'Content-Type': 'application/x-x509-ca-cert', 'Content-Disposition': 'attachment; filename="bathkeeper-ca.pem"' })
  })
  const description = openApi(parts.version)
  app.get('/api/openapi.json', (c) => {
    c.set('routeName', 'openapi')
    return c.json(description)
  })
  const schemaOfPlans = planSchema()
  app.get('/api/lab-plan.schema.json', (c) => {
    c.set('routeName', 'planSchema')
    return c.json(schemaOfPlans, 200, { 'Content-Type': 'application/schema+json', 'Content-Disposition': 'attachment; filename="lab-plan.schema.json"' })
  })
  app.route('/', api(parts, nonces))
  app.all('/api/*', () => {
    throw new Refused('notFound')
  })
  app.all('*', frontEnd(parts))
  return app
}
