import { computed, signal } from '@preact/signals'
import { describe, expect, it } from 'vitest'
import { watchCalls, type Notice } from '../../src/ui/boot/notices.ts'
import { core } from '../../src/ui/words/en/core.ts'
import { rooms } from '../../src/ui/words/en/rooms.ts'
import { Bench } from '../corrections/kit.ts'

const minute = 60_000

/** A phone in a pocket: the clock is moved by hand, and with it whatever waits for it. */
const pocket = () => {
  const bench = new Bench((plan) => {
    plan.checks = plan.checks.filter(({ id }) => ['neg-1-dev-temp', 'neg-1-dev-level', 'pos-2-dev-temp'].includes(id))
  })
  for (const check of ['neg-1-dev-temp', 'pos-2-dev-temp']) bench.read(check, 21)
  bench.read('neg-1-dev-level', 0)
  const lab = signal({ state: bench.state, ledger: bench.lab.ledger, log: bench.lab })
  const shown: Notice[] = []
  const badges: number[] = []
  let isSeen = false
  let waits: { at: number; work: () => void } | undefined
  const stop = watchCalls(
    { lab, plan: computed(() => lab.value.log.plan(bench.now)), words: signal({ ...core, ...rooms }), phone: { clock: { now: () => bench.now, mono: () => 0 } } as never },
    {
      isSeen: () => isSeen,
      show: (notice) => shown.push(notice),
      badge: (count) => badges.push(count),
      after: (milliseconds, work) => {
        waits = { at: bench.now + milliseconds, work }
        return () => (waits = undefined)
      },
    },
  )
  return {
    bench, shown, badges, stop,
    seen: (seen: boolean) => (isSeen = seen),
    passes: (minutes: number) => {
      bench.wait(minutes)
      if (waits && waits.at <= bench.now) waits.work()
    },
    entered: () => (lab.value = { state: bench.state, ledger: bench.lab.ledger, log: bench.lab }),
    nextIn: () => (waits ? (waits.at - bench.now) / minute : undefined),
  }
}

describe('a phone in a pocket', () => {
  it('calls when checks fall due, once for each machine, and counts them on its icon', () => {
    const phone = pocket()
    expect(phone.nextIn()).toBe(30)
    phone.passes(30)
    expect(phone.shown.map(({ title, body, path }) => [title, body, path])).toEqual([
      ['Negative machine 1: a check is due', 'Developer temperature', '/round'],
      ['Positive machine 2: a check is due', 'Developer temperature', '/round'],
    ])
    expect(phone.badges.at(-1)).toBe(2)
    // Half an hour later the level falls due, and the temperatures that nobody read do once more; each machine's notice takes the place of its last.
    phone.passes(30)
    expect(phone.shown.slice(2).map(({ title }) => title)).toEqual(['Negative machine 1: 2 checks are due', 'Positive machine 2: a check is due'])
    expect(phone.shown[2]!.tag).toBe(phone.shown[0]!.tag)
    expect(phone.badges.at(-1)).toBe(3)
  })

  it('is still while somebody looks at it, and does not catch up on what was seen', () => {
    const phone = pocket()
    phone.seen(true)
    phone.passes(30)
    phone.seen(false)
    phone.entered()
    expect(phone.shown).toEqual([])
    expect(phone.badges.at(-1)).toBe(2)
  })

  it('goes quiet when what was due is done, also on another phone', () => {
    const phone = pocket()
    phone.passes(30)
    for (const check of ['neg-1-dev-temp', 'pos-2-dev-temp']) phone.bench.read(check, 21)
    phone.entered()
    expect(phone.badges.at(-1)).toBe(0)
    expect(phone.nextIn()).toBe(30)
    phone.stop()
    expect(phone.nextIn()).toBeUndefined()
  })
})
