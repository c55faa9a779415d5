import type { ReadonlySignal } from '@preact/signals'
import type { PersonId } from '../plan/ids.ts'
import type { DeviceId, Hash } from '../record/ids.ts'
import type { CodesAnswer, Device } from '../wire/devices.ts'
import type { WireRefusal } from '../wire/messages.ts'
import type { Receipt } from '../wire/receipt.ts'
import type { PresenceAnswer } from '../wire/presence.ts'

/** Why the server gave no answer: its own refusal, or what stood between. */
export interface NoAnswer {
  code: WireRefusal['error'] | 'offline' | 'unreadable'
  /** Seconds to wait before asking again. */
  retryAfter?: number | undefined
  detail?: string | undefined
}
export type Asked<T> = { ok: true; value: T } | { ok: false; refusal: NoAnswer }

/** How this phone became, or becomes, a device of the laboratory. */
export type Enrolled =
  | { state: 'none' }
  /** A supervisor compares the six digits on both screens. */
  | { state: 'waiting'; digits: string }
  | { state: 'enrolled'; dev: DeviceId; name: string }
  /** Revoked, retired, quarantined, or not known to the server: it may still hand in what it holds. */
  | { state: 'ended'; how: 'revoked' | 'retired' | 'quarantined' | 'unknown' }

export interface EnrolGiven {
  code: string
  deviceName: string
  /** Only with the code that a new server printed in its terminal. */
  firstSupervisor?: { name: string; passphrase: string }
}

/** What a phone asks of the server besides sending and fetching: enrolment, and the supervisor's desk. All of it needs the network. */
export interface Office {
  /** The code that came with the address, from a QR. */
  codeInAddress: string | undefined
  enrolled: ReadonlySignal<Enrolled>
  /** The first supervisor, where this phone claimed the server: the plan that is made here must name them. */
  firstSupervisor(): Promise<{ id: PersonId; name: string } | undefined>
  /** Whether the laboratory has a first supervisor. */
  isClaimed(): Promise<Asked<boolean>>
  enrol(given: EnrolGiven): Promise<Asked<Receipt>>
  /** Where the server does not know this phone any more: to the screen that asks for a code. Nothing that waits is lost by it. */
  enrolAnew(): void
  /** Asks whether the digits have been confirmed. */
  askAgain(): Promise<Asked<Enrolled>>

  /** Re-authentication. With `about` the proof serves for one signature, without it for managing; the office keeps the latter while it lasts. */
  prove(person: PersonId, passphrase: string, about?: Hash): Promise<Asked<PresenceAnswer>>
  /** Until when managing needs no passphrase; undefined when it does. */
  provenUntil: ReadonlySignal<number | undefined>
  code(): Promise<Asked<CodesAnswer>>
  devices(): Promise<Asked<readonly Device[]>>
  confirm(dev: DeviceId, digits: string): Promise<Asked<Device>>
  end(dev: DeviceId, how: 'revoked' | 'retired', why: string): Promise<Asked<Device>>
  setPassphrase(person: PersonId, given: { passphrase: string; current?: string; name?: string }): Promise<Asked<true>>
  /** Forgets an invented laboratory, on the server and on this phone. */
  wipeDemo(laboratory: string, by: PersonId): Promise<Asked<true>>
}
