import { afterEach, expect, test, vi } from 'vitest'
import { createTrustScript } from '../../src/device/trusted.ts'

vi.stubGlobal('self', { location: new URL('https://lab.example/shift/today') })
afterEach(() => vi.unstubAllGlobals())

test('only the service worker and the meter reader of this site are started by address', () => {
  vi.stubGlobal('self', { location: new URL('https://lab.example/shift/today') })
  const trust = createTrustScript()
  expect(trust('/sw.js')).toBe('https://lab.example/sw.js')
  expect(trust('/reader/worker.min.js')).toBe('https://lab.example/reader/worker.min.js')
  for (const other of ['https://elsewhere.example/sw.js', '//elsewhere.example/reader/x.js', '/assets/x.js', '/reader/../x.js', 'data:text/javascript,1', 'blob:https://lab.example/1'])
    expect(() => trust(other)).toThrow(TypeError)
})

test('where the browser has Trusted Types the address goes through the one policy', () => {
  vi.stubGlobal('self', { location: new URL('https://lab.example/') })
  const made: string[] = []
  vi.stubGlobal('trustedTypes', {
    createPolicy: (name: string, rules: { createScriptURL(url: string): string }) => {
      made.push(name)
      return { createScriptURL: (url: string) => `trusted:${rules.createScriptURL(url)}` }
    },
  })
  expect(createTrustScript()('/sw.js')).toBe('trusted:https://lab.example/sw.js')
  expect(made).toEqual(['bathkeeper'])
})
