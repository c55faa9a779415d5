import type { MiddlewareHandler } from 'hono'
import type { Env } from './env.ts'

export const contentSecurityPolicy = [
  "default-src 'self'",
  "script-src 'self' 'wasm-unsafe-eval'",
  "style-src 'self'",
  "worker-src 'self'",
  "img-src 'self' blob: data:",
  "font-src 'self'",
  "connect-src 'self'",
  "object-src 'none'",
  "base-uri 'none'",
  "frame-ancestors 'none'",
  "form-action 'none'",
  "require-trusted-types-for 'script'",
].join('; ')

const always: Readonly<Record<string, string>> = {
  'Content-Security-Policy': contentSecurityPolicy,
  'Cross-Origin-Opener-Policy': 'same-origin',
  'Cross-Origin-Resource-Policy': 'same-origin',
  'X-Content-Type-Options': 'nosniff',
  'X-Frame-Options': 'DENY',
  'Referrer-Policy': 'no-referrer',
  'Permissions-Policy': 'camera=(self), screen-wake-lock=(self), geolocation=(), microphone=(), payment=(), usb=()',
}

export const securityHeaders: MiddlewareHandler<Env> = async (c, next) => {
  await next()
  for (const [name, value] of Object.entries(always)) c.res.headers.set(name, value)
  // Half a year: a laboratory that gives up HTTPS must not find its phones locked out for ever.
  if (c.var.client.isHttps) c.res.headers.set('Strict-Transport-Security', 'max-age=15552000')
}
