import type { Clock } from '../../device/clock.ts'
import { StoreFault } from '../../device/faults.ts'
import type { Phone as DevicePhone } from '../../device/open-phone.ts'
import type { PersonId } from '../../plan/ids.ts'
import type { MixingClock } from '../../rounds/mixing-clock.ts'
import type { Phone } from '../app-context.ts'
import type { Trouble } from '../trouble.ts'

interface PhoneParts {
  device: DevicePhone
  clock: Clock
  /** The laboratory's time: the phone's wall clock, corrected by the error last measured against the server. */
  now(): number
  person(): PersonId | null
  newId(): string
  mixing: MixingClock
  onTrouble(trouble: Trouble): void
}

/** An entry that was not taken, as the screens catch it: nothing was saved, and what was keyed is still there. */
class NotSaved extends Error {
  constructor(readonly code: string, detail: string) {
    super(detail)
    this.name = 'NotSaved'
  }
}

/** The phone as the screens see it. */
export const phoneOf = ({ device, clock, now, person, newId, mixing, onTrouble }: PhoneParts): Phone => ({
  clock: { now, mono: () => clock.monotonic(), left: (until) => mixing.left(until) },
  append: async (kind, data, { by, photos = [] } = {}) => {
    try {
      const appended = await device.append(kind, data, { person: by ?? person(), photos })
      if (appended.ok) return appended.saved.entry.id
      const { refusal } = appended
      throw new NotSaved(refusal.code, refusal.code === 'unfit' ? `${refusal.path}: ${refusal.detail}` : refusal.code)
    } catch (thrown) {
      if (thrown instanceof StoreFault && thrown.code !== 'contended') onTrouble(thrown.code)
      throw thrown
    }
  },
  drafts: {
    get: (key) => device.store.take('drafts', key),
    put: (key, value) => device.store.keep('drafts', key, value),
    remove: (key) => device.store.remove('drafts', key),
  },
  sendNow: () => device.sender.nudge('button'),
  newId,
  unsentFiles: async () => {
    const [identity, { makeUnsentFiles, unsentFileText }] = await Promise.all([device.identity(), import('../../device/export.ts')])
    const files = identity ? await makeUnsentFiles(device.store, identity, clock) : []
    return files.map((file) => ({ name: `bathkeeper-unsent-${file.dev}-${file.entries[0]!.entry.seq}.json`, json: unsentFileText(file) }))
  },
  handIn: async (text) => (await import('./hand-in-of.ts')).handInOf(device, text),
  readableRecord: async () => (await import('../../device/export.ts')).readableRecord(device.store),
  pins: {
    has: (who) => device.pins.has(who),
    choose: async (who, pin) => {
      const set = await device.pins.set(who, pin)
      if (!set.ok) throw new NotSaved('unfit', set.code)
    },
    check: async (who, pin) => {
      const checked = await device.pins.check(who, pin)
      switch (checked.code) {
        case 'right':
          return { ok: true }
        case 'wrong':
          return { ok: false, triesLeft: checked.triesLeft, waitSeconds: 0 }
        case 'locked':
          return { ok: false, triesLeft: 0, waitSeconds: Math.max(1, Math.ceil((checked.until - clock.wall()) / 1000)) }
        case 'none':
          return { ok: false, triesLeft: 0, waitSeconds: 0 }
      }
    },
  },
})
