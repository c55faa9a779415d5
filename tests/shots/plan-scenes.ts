import { demoLab } from '../../src/demo/lab.ts'
import type { CheckId, MachineId, PersonId, StationId } from '../../src/plan/ids.ts'
import type { LabPlan } from '../../src/plan/lab-plan.ts'
import { without } from '../../src/plan/without.ts'
import type { EntryId } from '../../src/record/ids.ts'
import type { Log } from './log.ts'
import type { Scene } from './scenes.ts'

const at = Date.parse('2026-01-14T14:06:00Z')
const supervisor = 'helena' as PersonId
const demo = demoLab()
const plan: LabPlan = {
  ...demo,
  materials: demo.materials.map((it) => (it.id === 'acetic-acid-28' ? { ...it, stock: { amount: 12, unit: 'L', countedAt: '2026-01-14T06:30:00.000Z', lot: 'L 2207', expires: '2026-06-30', least: 10 } } : it)),
  cautions: [
    { id: 'house-rule' as never, name: 'House rule for acid', version: 2, addsTo: 'acetic-acid-28', never: 'Never from the balcony.\nNever alone at night.', wear: 'The long apron from the hook at the door.' },
    { id: 'hardener' as never, name: 'Hardener of the house', version: 1, hazards: 'GHS05 H314 P280', never: 'Never with the developer.\nNever in the open drain.', wear: 'Gloves and goggles.', ventilation: 'Exhaust on.', firstAid: 'Rinse for 15 minutes and call the emergency number.', spill: 'Dam it, soak it up, wash down.' },
  ],
}

const told = (log: Log): EntryId => {
  const id = log.add('plan', 60 * 24 * 30, { plan, effectiveFrom: 0 }, supervisor)
  for (const machine of plan.machines) log.add('run', 470, { machine: machine.id, state: 'running', metresPerMinute: machine.aimMetresPerMinute })
  log.add('add', 200, { station: 'neg-1-fix' as StationId, material: 'acetic-acid-28' as never, portion: 1, poured: { amount: 2.35, unit: 'L', keyed: '2.35' }, mixSeconds: 720 }, 'marta')
  return id
}
const out = (log: Log, of: EntryId): void => {
  const reading = { check: 'neg-1-fix-ph' as CheckId, plan: of, value: 4.92, keyed: '4.92', unit: 'pH', how: 'keyed', verdict: 'ACT' } as const
  const first = log.add('reading', 30, reading, 'marta')
  log.add('reading', 28, { ...reading, repeatOf: first }, 'marta')
}

/** The plan with one part more, as it is while being keyed. */
const drafted = (path: string, change: (of: LabPlan) => object): Scene => ({
  at, path: () => path, person: supervisor,
  log: (log) => ({ base: told(log) }),
  drafts: ({ base }) => ({ 'plan-draft': { base, plan: { ...plan, ...change(plan) }, why: '' } }),
})
const bleach = { id: 'bleach', name: 'Bleach of the house', version: 1 }
const stocked = (stock: object) => (of: LabPlan): object => ({ materials: of.materials.map((it) => (it.id === 'borax' ? { ...it, stock: { unit: 'kg', countedAt: '2026-01-14T06:30:00.000Z', ...stock } } : it)) })
const freshCheck = { kind: 'reading', id: 'fresh', name: 'Fresh check', station: 'neg-1-fix', quantity: 'temperature', unit: '', limits: {}, schedule: { kind: 'interval', minutes: 60, graceMinutes: 15 }, states: ['running'], immediateHold: false, instrument: {}, setBy: { kind: 'startingValue', source: 'from memory' } }

export const planScenes: Record<string, Scene> = {
  'plan-home': { at, path: () => '/menu/plan', person: supervisor, log: (log) => void told(log) },
  'plan-check': { at, path: () => '/menu/plan/checks/neg-1-fix-ph', person: supervisor, log: (log) => void told(log) },
  'plan-material': { at, path: () => '/menu/plan/materials/acetic-acid-28', person: supervisor, log: (log) => void told(log) },
  'plan-materials': { at, path: () => '/menu/plan/materials', person: supervisor, log: (log) => void told(log) },
  'plan-caution': { at, path: () => '/menu/plan/cautions/hardener', person: supervisor, log: (log) => void told(log) },
  'plan-caution-fresh': drafted('/menu/plan/cautions/bleach/new', (of) => ({ cautions: [...(of.cautions ?? []), { ...bleach, never: '' }] })),
  'plan-caution-wrong': drafted('/menu/plan/cautions/bleach', (of) => ({ cautions: [...(of.cautions ?? []), { ...bleach, never: '', hazards: 'GHS05 H999' }] })),
  'plan-caution-review': drafted('/menu/plan/review', (of) => ({ cautions: [...(of.cautions ?? []), { ...bleach, never: 'Never with acid: chlorine.\nNever with a developer.', wear: 'Gloves and goggles.' }].map((it) => (it.id === 'house-rule' ? { ...it, never: 'Never from the balcony.' } : it)), ...stocked({ amount: 12.5, lot: 'B 11', least: 5 })(of) })),
  'plan-stock': drafted('/menu/plan/materials/borax', stocked({ amount: 12.5, lot: 'B 11', expires: '2027-03-31', least: 5 })),
  'plan-stock-wrong': drafted('/menu/plan/materials/borax', stocked({ amount: 'twelve', least: -1 })),
  'plan-check-fresh': drafted('/menu/plan/checks/fresh/new', (of) => ({ checks: [...of.checks, freshCheck] })),
  'plan-check-wrong': drafted('/menu/plan/checks/fresh', (of) => ({ checks: [...of.checks, freshCheck] })),
  'caution-added': { at, path: () => '/safety/acetic-acid-28', person: supervisor, log: (log) => void told(log) },
  'caution-own': { at, path: () => '/safety/hardener', person: supervisor, log: (log) => void told(log) },
  /** A draft that would take away what is still open. */
  'plan-still-open': {
    at, path: () => '/menu/plan/review', person: supervisor,
    log: (log) => { const base = told(log); out(log, base); return { base } },
    drafts: ({ base }) => ({ 'plan-draft': { base, plan: without({ ...plan, formulas: [] }, 'machines', 'neg-1'), why: '' } }),
  },
  'now-left-behind': {
    at, path: () => '/now', person: supervisor,
    log: (log) => {
      out(log, told(log))
      log.add('hold', 20, { machine: 'pos-2' as MachineId, reason: 'Scratch on the base side' }, 'marta')
      log.add('plan', 10, { plan: without(without({ ...plan, formulas: [] }, 'checks', 'neg-1-fix-ph'), 'machines', 'pos-2') as LabPlan, effectiveFrom: at - 600_000 }, supervisor)
    },
  },
}
