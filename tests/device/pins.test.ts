import { beforeEach, describe, expect, test } from 'vitest'
import { createPins } from '../../src/device/pins.ts'
import { MemoryStore } from '../contract/memory-store.ts'
import { HandClock, operator } from './phone.ts'

let store: MemoryStore
let clock: HandClock
const random = (count: number): Uint8Array<ArrayBuffer> => crypto.getRandomValues(new Uint8Array(count))
// Fewer rounds than on the phone: what is tested is what happens around them.
const pins = () => createPins(store, clock, random, 1000)

beforeEach(() => {
  store = new MemoryStore()
  clock = new HandClock()
})

describe('the PIN of a shared phone', () => {
  test('the right one opens, four to twelve digits are taken, nothing else', async () => {
    expect(await pins().check(operator, '1234')).toEqual({ code: 'none' })
    expect(await pins().set(operator, '12')).toEqual({ ok: false, code: 'shape' })
    expect(await pins().set(operator, '12a4')).toEqual({ ok: false, code: 'shape' })
    expect(await pins().set(operator, '1234')).toEqual({ ok: true })
    expect(await pins().check(operator, '1234')).toEqual({ code: 'right' })
    expect(JSON.stringify(await store.take('pins', operator))).not.toContain('1234')
  })

  test('five tries, then a delay that grows and that closing the app does not shorten', async () => {
    await pins().set(operator, '1234')
    const seen = []
    for (let tries = 0; tries < 4; tries++) seen.push(await pins().check(operator, '0000'))
    expect(seen).toEqual([4, 3, 2, 1].map((triesLeft) => ({ code: 'wrong', triesLeft })))
    const delays = []
    for (let tries = 0; tries < 8; tries++) {
      const checked = await pins().check(operator, '0000')
      if (checked.code !== 'locked') throw new Error(checked.code)
      delays.push((checked.until - clock.now) / 1000)
      expect(await pins().check(operator, '1234')).toMatchObject({ code: 'locked' })
      clock.now = checked.until
    }
    expect(delays).toEqual([30, 60, 120, 240, 480, 900, 900, 900])
    expect(await pins().check(operator, '1234')).toEqual({ code: 'right' })
    expect(await pins().check(operator, '0000')).toEqual({ code: 'wrong', triesLeft: 4 })
  })

  test('two tabs do not give twice the tries', async () => {
    await pins().set(operator, '1234')
    await Promise.all(Array.from({ length: 5 }, (_, index) => pins().check(operator, `000${index}`)))
    expect(await pins().check(operator, '1234')).toMatchObject({ code: 'locked' })
  })

  test('a clock set back does not lock out for years', async () => {
    await pins().set(operator, '1234')
    for (let tries = 0; tries < 5; tries++) await pins().check(operator, '0000')
    clock.now -= 365 * 86_400_000
    expect(await pins().check(operator, '1234')).toEqual({ code: 'right' })
  })

  test('the verifier is PBKDF2 with SHA-256 and 600,000 rounds', async () => {
    await createPins(store, clock, random).set(operator, '4821')
    const { salt, verifier } = (await store.take('pins', operator)) as { salt: string; verifier: string }
    const { pbkdf2Sync } = await import('node:crypto')
    expect(pbkdf2Sync('4821', Buffer.from(salt, 'base64url'), 600_000, 32, 'sha256').toString('base64url')).toBe(verifier)
  })
})
