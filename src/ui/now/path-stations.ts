import type { LabPlan } from '../../plan/lab-plan.ts'
import type { Machine, Station } from '../../plan/machine.ts'
import type { Due } from '../../projections/due.ts'
import { openExceptions } from '../../projections/exceptions.ts'
import type { LabState } from '../../projections/lab.ts'
import type { PathStation } from '../parts/film-path.tsx'
import { gaugeScale } from '../parts/gauge-scale.ts'
import type { StationMark } from '../parts/mark-sign.tsx'
import type { Words } from '../words/words.ts'

/** Places where no film runs stand beside the path: the silver cell, the plant room. */
export const onPath = ({ pathMetres, kind }: Station): boolean => pathMetres !== undefined || kind === 'feed' || kind === 'takeOff'

/** The most pressing thing at a station. */
export const markAt = (lab: LabState, station: Station, due: readonly Due[]): StationMark | undefined => {
  if (openExceptions(lab.exceptions).some((it) => it.station === station.id)) return 'act'
  const here = due.filter(({ check }) => check.station === station.id)
  const warns = here.some(({ check }) => lab.checks[check.id]?.recent.at(-1)?.verdict === 'WARN')
  if (here.some(({ status }) => status === 'late')) return 'late'
  if (warns) return 'warn'
  return here.some(({ status }) => status === 'due') ? 'due' : undefined
}

/** How full the tank stands by its level check; undefined where nobody has looked. The aim is drawn at four fifths of the glass. */
export const levelAt = (lab: LabState, plan: LabPlan, station: Station): number | undefined => {
  for (const check of plan.checks) {
    if (check.kind !== 'reading' || check.quantity !== 'level' || check.station !== station.id) continue
    const value = lab.checks[check.id]?.recent.at(-1)?.value
    if (value !== undefined) return 0.8 + gaugeScale(check.limits).share(value) * 0.16
  }
  return undefined
}

export const pathStations = (lab: LabState, plan: LabPlan, machine: Machine, due: readonly Due[], words: Words): PathStation[] =>
  machine.stations.map((station) => {
    const mark = markAt(lab, station, due)
    return {
      station,
      mark,
      level: levelAt(lab, plan, station),
      href: `/station/${station.id}`,
      says: words.now.station(spokenName(station), mark ? [words.marks.station[mark]] : []),
    }
  })

/** What is drawn, then what it is: voice control finds a station by the letters that are seen. */
const spokenName = ({ short, name }: Station): string => (` ${name} `.toLowerCase().includes(` ${short.toLowerCase()} `) ? name : `${short}, ${name}`)
