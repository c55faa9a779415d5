import type { Machine } from '../../plan/machine.ts'
import { spanAt, type MachineNow } from '../../projections/machines.ts'

/** When a strip was where, in milliseconds since 1970. */
export interface StripTimes {
  stripIn: number
  /** Into and out of the developer, and the middle between: the bath for which the strip speaks. Absent where the plan has no developer on the path. */
  developer?: { from: number; to: number; middle: number }
  /** Out of the machine, ready to be read. */
  out: number
}

const minute = 60_000

/** Path from the feed to the developer, in it, and from the feed to the end. */
const paths = (machine: Machine): { before: number; developer: number; whole: number } => {
  let before = 0
  let developer = 0
  let whole = 0
  for (const { kind, pathMetres = 0 } of machine.stations) {
    if (kind === 'developer') developer += pathMetres
    else if (developer === 0) before += pathMetres
    whole += pathMetres
  }
  return { before, developer, whole }
}

/**
 * When a point of the film that was somewhere at an instant has gone so many metres further (or, with a negative length, when it was so far
 * back): path length ÷ speed, with the changes of speed that were said. Before anybody spoke of the machine, and while it does not
 * run, the aim speed of the plan is taken: a strip does not stand still for ever.
 */
export const timeAfterMetres = (now: MachineNow | undefined, machine: Machine, from: number, metres: number): number => {
  const speedAt = (time: number): number => {
    const { state, metresPerMinute } = spanAt(now, time)
    return state === 'running' && metresPerMinute > 0 ? metresPerMinute : machine.aimMetresPerMinute
  }
  const back = metres < 0
  let left = Math.abs(metres)
  let time = from
  const borders = (now?.spans ?? []).map((span) => span.from).filter((at) => (back ? at < from : at > from))
  for (const border of back ? borders.toReversed() : borders) {
    const speed = speedAt(back ? border : time)
    const length = (Math.abs(border - time) / minute) * speed
    if (length >= left) return time + ((back ? -left : left) / speed) * minute
    left -= length
    time = border
  }
  const speed = speedAt(back ? time - 1 : time)
  return time + ((back ? -left : left) / speed) * minute
}

/** A strip's way through the machine from the moment it went in. */
export const stripTimes = (now: MachineNow | undefined, machine: Machine, stripIn: number): StripTimes => {
  const { before, developer, whole } = paths(machine)
  const at = (metres: number): number => Math.round(timeAfterMetres(now, machine, stripIn, metres))
  return {
    stripIn,
    out: at(whole),
    ...(developer > 0 ? { developer: { from: at(before), to: at(before + developer), middle: at(before + developer / 2) } } : {}),
  }
}

/** When a strip went in that has just come out. */
export const stripInFor = (now: MachineNow | undefined, machine: Machine, out: number): number => Math.round(timeAfterMetres(now, machine, out, -paths(machine).whole))
