// Ends with 0 when the server on this machine answers, by TLS or without. Plain Node, for a container's health check.
import { get as getPlain } from 'node:http'
import { get as getSecure } from 'node:https'

const path = `//127.0.0.1:${process.env.PORT ?? 8080}/healthz`

const isAlive = (get, url) =>
  new Promise((resolve) => {
    get(url, { rejectUnauthorized: false, timeout: 3_000 }, (answer) => resolve(answer.statusCode === 200) || answer.resume())
      .on('error', () => resolve(false))
      .on('timeout', function () {
        this.destroy()
      })
  })

process.exit((await isAlive(getSecure, `https:${path}`)) || (await isAlive(getPlain, `http:${path}`)) ? 0 : 1)
