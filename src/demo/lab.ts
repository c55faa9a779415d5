import type { LabPlan } from '../plan/lab-plan.ts'
import { parsePlan } from '../plan/plan-problems.ts'
import { formulas } from './formulas.ts'
import { houseChecks } from './house-checks.ts'
import type { WrittenPlan } from './kit.ts'
import { negativeMachine, positiveMachine } from './machines.ts'
import { materials } from './materials.ts'
import { methods } from './methods.ts'
import { negativeChecks } from './negative-checks.ts'
import { positiveChecks } from './positive-checks.ts'

/** An invented laboratory; no person, place or telephone number of it exists. */
export const writtenDemoLab: WrittenPlan = {
  format: 'bathkeeper-plan',
  version: 1,
  name: 'Harbour Lane Film Laboratory',
  demo: true,
  timeZone: 'Europe/Lisbon',
  units: { temperature: '°C', volume: 'L', mass: 'g', length: 'ft' },
  people: [
    { id: 'marta', name: 'Marta Quintela', role: 'operator' },
    { id: 'tomas', name: 'Tomás Aldeia', role: 'operator' },
    { id: 'helena', name: 'Helena Sobral', role: 'supervisor' },
  ],
  shifts: [
    { id: 'early', name: 'Early shift', from: '06:00', to: '14:00' },
    { id: 'late', name: 'Late shift', from: '14:00', to: '22:00' },
    { id: 'night', name: 'Night shift', from: '22:00', to: '06:00' },
  ],
  machines: [negativeMachine, positiveMachine],
  checks: [...negativeChecks, ...positiveChecks, ...houseChecks],
  materials,
  methods,
  formulas,
  emergency: {
    calls: [
      { who: 'Fire and ambulance', number: '112' },
      { who: 'Supervisor on call', number: 'house 201' },
      { who: 'Gate', number: 'house 100' },
    ],
    eyewash: 'Beside the mixing room door and at the end of each machine',
    assembly: 'Yard, by the loading dock',
  },
  onCall: 'helena',
}

export const demoLab = (): LabPlan => {
  const parsed = parsePlan(writtenDemoLab)
  if (!parsed.ok) throw new Error('the demo plan does not hold', { cause: parsed.problems })
  return parsed.plan
}
