import type { LabPlan } from '../plan/lab-plan.ts'
import type { Teller } from './history.ts'
import { shiftAt } from '../plan/shift-time.ts'

const minute = 60_000

/** Something that befalls the laboratory. Asked before each round; tells its part when its time has come. */
export type Story = (teller: Teller, roundAt: number, end: number) => void

/** Nothing that takes so long is begun near the end, where it would stay half told. */
const roomForStory = 100 * minute

/** Once in a shift of that name, so many minutes after its start, where there is still room. */
const once = (shift: string, afterMinutes: number, tell: (teller: Teller, at: number) => void): Story => {
  const told = new Set<number>()
  return (teller, roundAt, end) => {
    const span = shiftAt(teller.plan, roundAt)
    const at = span.from + afterMinutes * minute
    if (span.shift.id !== shift || roundAt < at || told.has(span.from)) return
    told.add(span.from)
    if (at + roomForStory <= end) tell(teller, roundAt)
  }
}

const bring = (check: string, by: number) => (teller: Teller): void => {
  const found = teller.checkOf(check)
  if (found) teller.model.bring(found.id, by)
}

/** Stories of the demo's own places; in another plan those whose place is missing are left out. */
export const tellStories = (plan: LabPlan): Story[] => {
  const has = (check: string): boolean => plan.checks.some(({ id }) => id === check)
  const stories: (Story | false)[] = [
    // Developer carried over wears the acid down: a little at first, then out. In each shift, so that at every hour something was poured and answered.
    ...plan.shifts.flatMap(({ id }) => [
      has('neg-1-fix-ph') && once(id, 0, bring('neg-1-fix-ph', 0.08)),
      has('neg-1-fix-ph') && once(id, 150, bring('neg-1-fix-ph', 0.5)),
    ]),
    has('pos-2-dev-level') && once('late', 60, bring('pos-2-dev-level', -15)),
    has('neg-1-wash-flow') && once('late', 200, bring('neg-1-wash-flow', -1.6)),
    has('neg-1-dev-temp') && once('night', 90, bring('neg-1-dev-temp', 0.4)),
    has('neg-1-scratches') &&
      once('late', 120, (teller, at) => {
        const check = teller.checkOf('neg-1-scratches')
        if (check?.kind !== 'look') return
        const exception = teller.look(check, false, at - 4 * minute)
        const machine = teller.machineOf('neg-1').id
        const hold = teller.say('hold', { machine, reason: 'Scratch on the emulsion side', exception, filmAtRiskMetres: 1737 }, at - 3 * minute)
        teller.say('note', { text: 'Roller 14 in the dryer did not turn; cleaned and free again. Rolls since the last look tagged.', about: 'maintenance', machine, exception }, at + 15 * minute)
        teller.look(check, true, at + 20 * minute)
        teller.say('release', { hold: hold.id, reason: 'Scratch test on leader clean, both sides' }, at + 22 * minute)
      }),
    has('pos-2-strip') &&
      once('early', 240, (teller, at) => {
        const check = teller.checkOf('pos-2-strip')
        if (check?.kind !== 'strip') return
        const first = teller.strip(check, 0.12, at - 2 * minute)
        teller.strip(check, 0, at + 26 * minute, first)
      }),
    has('silver-current') &&
      once('night', 180, (teller, at) =>
        void teller.say('skip', { check: teller.checkOf('silver-current')!.id, due: at, reason: 'instrumentFault', remark: 'Ammeter needle sticks' }, at),
      ),
    // A stop for cleaning: what falls due meanwhile is not missed.
    plan.machines.some(({ id }) => id === 'pos-2') &&
      once('night', 240, (teller, at) => {
        const machine = teller.machineOf('pos-2')
        teller.say('run', { machine: machine.id, state: 'stopped' }, at + minute)
        teller.say('note', { text: 'Positive machine stopped to change the squeegee rubbers.', about: 'maintenance', machine: machine.id }, at + 2 * minute)
        teller.say('run', { machine: machine.id, state: 'startUp' }, at + 62 * minute)
        teller.say('run', { machine: machine.id, state: 'running', metresPerMinute: machine.aimMetresPerMinute }, at + 88 * minute)
      }),
    once('early', 300, (teller, at) => void teller.say('note', { text: '20 L of used fixing bath to the silver cell tank.', about: 'waste' }, at)),
    once('late', 420, (teller, at) => handOver(teller, at, 'late')),
    once('early', 420, (teller, at) => handOver(teller, at, 'early')),
    once('night', 420, (teller, at) => handOver(teller, at, 'night')),
  ]
  return stories.filter((story) => story !== false)
}

const handOver = (teller: Teller, at: number, shift: string): void => {
  const span = shiftAt(teller.plan, at)
  const found = teller.plan.shifts.find(({ id }) => id === shift)
  if (!found) return
  const common = { shift: found.id, date: span.date, notes: 'Both machines running. Watch the fixing bath of the negative machine: its pH climbs.', open: [] }
  teller.say('handover', { ...common, side: 'given' }, span.to - 10 * minute)
  teller.say('handover', { ...common, side: 'accepted' }, span.to + 2 * minute)
}
