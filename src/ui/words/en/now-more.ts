import type { MachineState } from '../../../plan/schedule.ts'
import { now } from './now.ts'

/** What the screens behind Now say: not needed for the first of them. */
export const nowMore = {
  ...now,
  machine: {
    change: 'Change state or speed',
    title: (machine: string): string => machine,
    state: 'What is it doing?',
    speed: 'Speed',
    aim: (speed: string): string => `Aim ${speed}`,
    otherSpeed: 'Another speed',
    saveState: (state: string, speed: string | undefined): string => (speed ? `Save: ${state}, ${speed}` : `Save: ${state}`),
    outReason: (check: string): string => `${check} out of limits`,
    badSpeed: 'Key the speed as a number, such as 30.5.',
    hold: 'Hold the machine',
    holdReason: 'Why is it held?',
    holdSave: 'Hold: no production film',
    release: 'Release the machine',
    releaseReason: 'Why may it run again?',
    releaseSave: 'Release',
    reasonMissing: 'Say why in a few words. The supervisor reads it at sign-off.',
    leaderNote: 'Stop feeding work, run leader through, tag every roll since the last good check. Do not stop the machine dead with film in the developer, unless people are at risk or film is breaking.',
  },
  leftBehind: {
    title: 'No longer in the plan',
    held: (machine: string): string => `${machine} is still held`,
    machine: 'This machine is no longer in the plan. It is still held: say why the hold ends.',
    exception: 'A revision took this out while it was open. Nothing falls due here any more: close it and say why, or bring it back into the plan.',
  },
  stationScreen: {
    open: 'Out of limits',
    checks: 'Checks here',
    last: (when: string): string => `last ${when}`,
    never: 'not done yet',
    bath: 'Bath',
    litres: 'Volume',
    turnover: 'One turnover',
    startingValue: 'starting value',
    none: 'The plan has no check at this station.',
  },
  states: ['startUp', 'running', 'standby', 'changeOver', 'shutDown', 'stopped'] satisfies MachineState[],
}
