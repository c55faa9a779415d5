import { extname } from 'node:path'
import type { Handler } from 'hono'
import type { Parts } from '../parts.ts'
import type { Env } from './env.ts'
import { Refused } from './refused.ts'
import { notBuilt } from '../words.ts'

/** The app's files; every other address without an ending is a place inside the app, which finds its own way. */
export const frontEnd = (parts: Parts): Handler<Env> => async (c) => {
  c.set('routeName', 'frontEnd')
  if (c.req.method !== 'GET' && c.req.method !== 'HEAD') throw new Refused('notFound')
  const files = parts.files()
  if (!files) return c.text(notBuilt, 503, { 'Cache-Control': 'no-store', 'Retry-After': '5' })
  let path: string
  try {
    path = decodeURIComponent(new URL(c.req.url).pathname)
  } catch {
    throw new Refused('notFound')
  }
  const request = { acceptEncoding: c.req.header('accept-encoding') ?? '', ifNoneMatch: c.req.header('if-none-match') }
  const answer = await files.answer(path === '/' ? '/index.html' : path, request)
  if (answer) return answer
  if (extname(path) !== '') throw new Refused('notFound')
  const page = await files.answer('/index.html', request)
  if (!page) throw new Refused('notFound')
  return page
}
