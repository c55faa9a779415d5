import type { Quantity } from '../../plan/check.ts'
import type { RemedyCode, Setting } from '../remedy.ts'
import type { Builder } from '../row.ts'
import { say } from '../say.ts'
import { act } from './act.ts'

/** Things that are simply set back to their aim, where the cause has been looked for. */
const settingOf: Partial<Record<Quantity, { code: RemedyCode; quantity: Setting['quantity']; says: string }>> = {
  replenishment: { code: 'replenishment', quantity: 'replenishment', says: 'setReplenisherRate' },
  speed: { code: 'speed', quantity: 'speed', says: 'setSpeedToAim' },
  flow: { code: 'washFlow', quantity: 'flow', says: 'restoreFlow' },
  current: { code: 'cellCurrent', quantity: 'current', says: 'setCurrent' },
  humidity: { code: 'dryer', quantity: 'humidity', says: 'setHumidity' },
  temperature: { code: 'dryer', quantity: 'temperature', says: 'setDryerTemperature' },
}

export const setToAim: Builder = (situation, row) => {
  const { check, value } = situation
  if (check.kind !== 'reading' || value === undefined) return []
  const setting = settingOf[check.quantity]
  if (!setting) return []
  return [
    act(situation, row, {
      code: setting.code,
      says: say(setting.says),
      settings: [{ quantity: setting.quantity, from: value, to: check.limits.aim, unit: check.unit }],
    }),
  ]
}
