import { waterBlend } from '../../science/water/blend.ts'
import { waterChill } from '../../science/water/chill.ts'
import { mixingTime } from '../mixing-time.ts'
import type { Setting } from '../remedy.ts'
import type { Builder } from '../row.ts'
import { say } from '../say.ts'
import type { Situation } from '../situation.ts'
import { act, worked } from './act.ts'

const toAim = ({ check, value }: Situation): Setting[] =>
  check.kind === 'reading' && value !== undefined ? [{ quantity: 'temperature', from: value, to: check.limits.aim, unit: check.unit }] : []

/**
 * A bath that is too warm: chilled water through its heat exchanger. Ice goes into the jacket's or the mixing water, where somebody says how much
 * of it there is; it is never offered for a working bath, which it would dilute and shock.
 */
export const cooling: Builder = (situation, row) => {
  const { bath, known } = situation
  const ice = known.jacket && worked(waterChill, known.jacket)
  return [
    act(situation, row, {
      code: 'cooling',
      says: say('openChilledWater'),
      how: [say('neverIceIntoBath'), say('slowlyNoStep')],
      settings: [...toAim(situation), ...(ice ? [{ quantity: 'ice' as const, to: ice.result.iceKilograms, unit: 'kg', working: ice.working }] : [])],
      ...(bath ? { wait: mixingTime(bath, 'pH') } : {}),
      ...(ice ? {} : { lacks: say('jacketWaterUnknown') }),
    }),
  ]
}

/** A bath that is too cold: heater or hot water round it, never into it. */
export const heating: Builder = (situation, row) => [
  act(situation, row, {
    code: 'heating',
    says: say('heatAndCirculate'),
    how: [say('neverHotWaterIntoBath'), say('slowlyNoStep')],
    settings: toAim(situation),
    ...(situation.bath ? { wait: mixingTime(situation.bath, 'pH') } : {}),
  }),
]

/** Wash and mixing water, which are no working baths: hot and cold blended to the aim. */
export const blending: Builder = (situation, row) => {
  const { check, bath, known } = situation
  if (bath || check.kind !== 'reading') return []
  const made = known.supply && worked(waterBlend, { ...known.supply, wantCelsius: check.limits.aim })
  return [
    act(situation, row, {
      code: 'blend',
      says: say('setMixingValve'),
      how: [say('slowlyNoStep')],
      settings: [
        ...toAim(situation),
        ...(made
          ? [
              { quantity: 'hotWater' as const, to: made.result.hotLitres, unit: 'L', working: made.working },
              { quantity: 'coldWater' as const, to: made.result.coldLitres, unit: 'L' },
            ]
          : []),
      ],
      ...(made ? {} : { lacks: say('supplyTemperaturesUnknown') }),
    }),
  ]
}
