import { signal } from '@preact/signals'
import type { Office } from '../../src/ui/office.ts'

const offline = { ok: false, refusal: { code: 'offline' } } as const

/** The supervisor's desk without a network. */
export const office = (_now: number): Office => ({
  codeInAddress: undefined,
  enrolled: signal({ state: 'enrolled', dev: '00000000000000d1' as never, name: 'Machine room 1' }),
  firstSupervisor: async () => undefined,
  isClaimed: async () => offline,
  enrol: async () => offline,
  enrolAnew: () => undefined,
  askAgain: async () => offline,
  prove: async () => offline,
  provenUntil: signal(undefined),
  code: async () => offline,
  devices: async () => offline,
  confirm: async () => offline,
  end: async () => offline,
  setPassphrase: async () => offline,
  wipeDemo: async () => offline,
})
