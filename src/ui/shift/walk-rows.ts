import { checkOf, machineOf, placeOf } from '../../plan/find.ts'
import type { StationId } from '../../plan/ids.ts'
import type { LabPlan } from '../../plan/lab-plan.ts'
import type { Ledger } from '../../projections/ledger.ts'
import type { LabState } from '../../projections/lab-state.ts'
import type { WalkItem } from '../../projections/walk-down.ts'
import { timeText } from '../format.ts'
import { materialName } from '../material-name.ts'
import { clockText } from '../parts/timer-ring.tsx'
import { speedText } from '../units.ts'
import type { Words } from '../words/words.ts'

/** One line of the walk-down as a person ticks it: what was late on one machine is one line. */
export interface WalkRow {
  key: string
  what: string
  under: string
  href: string
  items: WalkItem[]
}

interface Around {
  plan: LabPlan
  state: LabState
  ledger: Ledger
  now: number
  words: Words
}

export const walkRows = (items: readonly WalkItem[], around: Around): WalkRow[] => {
  const rows = items.flatMap((item) => (item.what === 'late' ? [] : [rowOf(item, around)]))
  return [...rows, ...lateRows(items, around)]
}

const rowOf = (item: Exclude<WalkItem, { what: 'late' }>, { plan, state, ledger, now, words }: Around): WalkRow => {
  const say = words.shift.walk
  const clock = (time: number): string => timeText(time, plan.timeZone)
  const left = (until: number): string => say.mixing(clockText((until - now) / 1000), clock(until))
  const station = (id: StationId): string => placeOf(plan, id).station.name
  const row = (what: string, under: string, href: string): WalkRow => ({ key: `${item.what} ${item.ref}`, what, under, href, items: [item] })
  switch (item.what) {
    case 'machine': {
      const name = words.marks.machine[item.state]
      return row(machineOf(plan, item.ref).name, item.metresPerMinute > 0 ? words.now.speed(name, speedText(item.metresPerMinute, plan.units.length)) : name, `/machine/${item.ref}`)
    }
    case 'hold':
      return row(say.held(machineOf(plan, item.machine).name), state.holds[item.ref]?.reason ?? '', `/machine/${item.machine}`)
    case 'exception': {
      const exception = state.exceptions.all[item.ref]
      const name = exception ? `${checkOf(plan, exception.check).name} ${exception.marks.at(-1)?.keyed ?? ''}`.trim() : ''
      const phase = item.phase === 'mixing' && item.mixUntil !== undefined ? left(item.mixUntil) : item.phase === 'mixing' ? '' : words.now.phase[item.phase]
      return row(`${station(item.station)} · ${name}`, phase, `/exception/${item.ref}`)
    }
    case 'mixing': {
      const line = ledger.line(item.ref)
      return row(`${station(item.station)} · ${line?.kind === 'add' ? materialName(plan, line.data.material, words) : ''}`, left(item.until), `/station/${item.station}`)
    }
    case 'batch': {
      const mix = state.mixes[item.ref]
      return row(say.batch(mix?.name ?? ''), station(item.station), `/mixing/${item.ref}`)
    }
    case 'instrument': {
      const check = checkOf(plan, item.ref)
      return row(check.calibrates ?? check.name, words.shift.instruments.states[item.state], `/check/${item.ref}`)
    }
  }
}

const lateRows = (items: readonly WalkItem[], { plan, words }: Around): WalkRow[] => {
  const late = items.filter((it) => it.what === 'late')
  return plan.machines.flatMap(({ id, name, stations }): WalkRow[] => {
    const own = late.filter(({ ref }) => stations.some((station) => station.id === checkOf(plan, ref).station))
    if (own.length === 0) return []
    const names = own.slice(0, 3).map(({ ref, dueAt }) => `${timeText(dueAt, plan.timeZone)} ${checkOf(plan, ref).name}`)
    return [{ key: `late ${id}`, what: words.shift.walk.late(own.length, name), under: [...names, own.length > 3 ? words.now.more(own.length - 3) : ''].filter(Boolean).join(', '), href: `/round/${id}`, items: own }]
  })
}
