import { computed, signal, type Signal } from '@preact/signals'
import type { Phone as DevicePhone } from '../../device/open-phone.ts'
import { codeInFragment } from '../../wire/code.ts'
import type { Enrolled, Office } from '../office.ts'
import type { Desk } from './desk.ts'

export interface OfficeParts {
  device: DevicePhone
  fragment: string
  /** The laboratory's time. */
  now(): number
  /** This phone has become a device, or another one. */
  onEnrolled(): void
}

/** What the office and its desk share. */
export interface OfficeState {
  enrolled: Signal<Enrolled>
  /** A supervisor's proof of presence, while it lasts. */
  proof: Signal<{ proof: string; until: number } | undefined>
}

/** Enrolment and the supervisor's desk. What the desk does needs the network, so it is fetched when it is first asked for something. */
export const officeOf = async (parts: OfficeParts): Promise<Office> => {
  const { device } = parts
  const state: OfficeState = { enrolled: signal<Enrolled>(await enrolledNow(device)), proof: signal(undefined) }
  let desk: Promise<Desk> | undefined
  const ask = (): Promise<Desk> => (desk ??= import('./desk.ts').then((it) => it.openDesk(parts, state)))

  // The server writes a phone off; the phone hears of it when it sends.
  device.sender.subscribe(({ problem }) => {
    if (problem && (problem.code === 'revoked' || problem.code === 'retired' || problem.code === 'quarantined')) state.enrolled.value = { state: 'ended', how: problem.code }
    // The server holds another history of this phone: as it is, nothing that it records will ever count.
    else if (problem?.code === 'fork') state.enrolled.value = { state: 'ended', how: 'quarantined' }
  })

  return {
    codeInAddress: codeInFragment(parts.fragment),
    enrolled: state.enrolled,
    provenUntil: computed(() => state.proof.value?.until),
    firstSupervisor: async () => (await ask()).firstSupervisor(),
    isClaimed: async () => (await ask()).isClaimed(),
    enrol: async (given) => (await ask()).enrol(given),
    enrolAnew: () => (state.enrolled.value = { state: 'ended', how: 'unknown' }),
    askAgain: async () => (await ask()).askAgain(),
    prove: async (...given) => (await ask()).prove(...given),
    code: async () => (await ask()).code(),
    devices: async () => (await ask()).devices(),
    confirm: async (...given) => (await ask()).confirm(...given),
    end: async (...given) => (await ask()).end(...given),
    setPassphrase: async (...given) => (await ask()).setPassphrase(...given),
    wipeDemo: async (...given) => (await ask()).wipeDemo(...given),
  }
}

export const enrolledNow = async (device: DevicePhone): Promise<Enrolled> => {
  const identity = await device.identity()
  if (!identity) return { state: 'none' }
  const { receipt } = identity
  return receipt.state === 'waiting' ? { state: 'waiting', digits: receipt.digits } : { state: 'enrolled', dev: receipt.dev, name: '' }
}
