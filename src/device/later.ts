import type { CourierParts } from './courier.ts'
import type { Enrolment } from './enrolment.ts'
import type { Exchanged } from './exchange.ts'
import type { ExchangeParts } from './exchange-parts.ts'
import type { Locks } from './locks.ts'
import type { createPins, Pins } from './pins.ts'
import type { Door } from './server-door.ts'
import type { ShelfStore } from './store.ts'

/**
 * What speaks with the server is fetched when there is first something to say to it: the first screen, which needs no network, does
 * without. Where even this cannot be fetched, there is no network.
 */
const unreachable = { ok: false, problem: { code: 'unreachable' } } as const

const once = <T>(load: () => Promise<T>): (() => Promise<T | undefined>) => {
  let loaded: Promise<T | undefined> | undefined
  return async () => {
    loaded ??= load().catch(() => undefined)
    const it = await loaded
    if (it === undefined) loaded = undefined
    return it
  }
}

export const doorLater = (parts: Omit<CourierParts, 'helloPath'>, store: ShelfStore, onFault: (thrown: unknown) => void): Door => {
  const door = once(async () => {
    const [{ createCourier }, { createDoor }, { pathOf }, { keepSkew }] = await Promise.all([
      import('./courier.ts'), import('./server-door.ts'), import('../wire/routes.ts'), import('./keep-skew.ts'),
    ])
    return createDoor(createCourier({ ...parts, helloPath: pathOf('hello') }), (measured) => void keepSkew(store, measured).catch(onFault))
  })
  return {
    call: async (name, ask) => (await door())?.call(name, ask) ?? unreachable,
    read: async (name, schema, ask) => (await door())?.read(name, schema, ask) ?? unreachable,
    open: async (name, ask) => (await door())?.open(name, ask) ?? unreachable,
  }
}

export const enrolmentLater = (parts: Pick<ExchangeParts, 'store' | 'door' | 'clock' | 'verifier'> & { locks: Locks }): Enrolment => {
  const enrolment = once(async () => (await import('./enrolment.ts')).createEnrolment(parts))
  return {
    enrol: async (request) => (await enrolment())?.enrol(request) ?? unreachable,
    isConfirmed: async () => (await enrolment())?.isConfirmed() ?? unreachable,
    wiped: async (receipt) => (await import('./enrolment.ts')).createEnrolment(parts).wiped(receipt),
  }
}

export const exchangeLater = (parts: ExchangeParts): (() => Promise<Exchanged>) => {
  const loaded = once(() => import('./exchange.ts'))
  return async () => (await loaded())?.exchange(parts) ?? { sent: 0, received: 0, regained: 0, photosSent: 0, problem: { code: 'unreachable' } }
}

/** A PIN is asked for after the first screen; its file is in the service worker's store with the rest. */
export const pinsLater = (...parts: Parameters<typeof createPins>): Pins => {
  const pins = async (): Promise<Pins> => (await import('./pins.ts')).createPins(...parts)
  return {
    has: async (person) => (await pins()).has(person),
    set: async (...given) => (await pins()).set(...given),
    check: async (...given) => (await pins()).check(...given),
    remove: async (person) => (await pins()).remove(person),
  }
}
