import type { StationKind } from '../../plan/machine.ts'

/** What the drawing knows of a station. */
export interface StrandStation {
  kind: StationKind
  hasBath: boolean
  pathMetres: number
}

export interface Strand {
  width: number
  height: number
  /** The film, as an SVG path. */
  path: string
  rollers: { x: number; y: number; r: number }[]
  reels: { x: number; y: number; r: number }[]
  /** One for each station with a bath. */
  tanks: { station: number; x: number; y: number; width: number; height: number }[]
  /** Closed cabinets without liquid: the dryer. */
  cabinets: { x: number; y: number; width: number; height: number }[]
}

const top = 32
const bottom = 84
const tankTop = 46
const tankBottom = 96

/** Runs of the strand up and down: long paths fold more often. */
const loopsOf = (station: StrandStation, longest: number, room: number): number => {
  const wanted = Math.max(1, Math.round((station.pathMetres / longest) * 3))
  return Math.max(1, Math.min(wanted, Math.floor(room / 14)))
}

/**
 * The film's way over and under the rollers through one row of stations, each in a cell of equal width.
 * It comes in at the left on the height of the top rollers and leaves at the right, so that rows join.
 */
export const strand = (stations: readonly StrandStation[], width: number): Strand => {
  const cell = width / stations.length
  const longest = Math.max(1, ...stations.map(({ pathMetres }) => pathMetres))
  const drawing: Strand = { width, height: tankBottom + 2, path: '', rollers: [], reels: [], tanks: [], cabinets: [] }
  let path = ''
  const to = (x: number, y: number): void => {
    path += path ? `L${round(x)} ${round(y)}` : `M${round(x)} ${round(y)}`
  }
  stations.forEach((station, index) => {
    const x = index * cell
    const middle = x + cell / 2
    if (station.kind === 'feed' || station.kind === 'takeOff') {
      const r = Math.min(15, cell / 2 - 4)
      const y = top - 5 + r
      drawing.reels.push({ x: middle, y, r })
      if (station.kind === 'feed') {
        path += `M${round(middle)} ${top - 5}`
        to(x + cell, top - 5)
      } else {
        to(middle, top - 5)
      }
      return
    }
    if (station.kind === 'squeegee' || station.kind === 'drive') {
      drawing.rollers.push({ x: middle, y: top - 10, r: 4 }, { x: middle, y: top, r: 4 })
      if (!path) to(x, top - 5)
      to(x + cell, top - 5)
      return
    }
    const inner = Math.min(cell - 10, 72)
    const loops = loopsOf(station, longest, inner)
    const r = Math.min(5, inner / (loops * 4))
    const wide = (loops * 2 - 1) * 2 * r
    const first = middle - wide / 2
    const upper = top
    const line = top - 5
    if (!path) to(x, line)
    // Over the first top roller and down.
    to(first - r, line)
    path += `Q${round(first)} ${line} ${round(first)} ${upper + r}`
    drawing.rollers.push({ x: first - r, y: line + r + 0.5, r: Math.max(2, r - 2) })
    for (let loop = 0; loop < loops; loop++) {
      const down = first + loop * 4 * r
      const up = down + 2 * r
      to(down, bottom)
      path += `A${r} ${r} 0 0 0 ${round(up)} ${bottom}`
      drawing.rollers.push({ x: down + r, y: bottom, r: Math.max(2, r - 2) })
      if (loop < loops - 1) {
        to(up, upper)
        path += `A${r} ${r} 0 0 1 ${round(up + 2 * r)} ${upper}`
        drawing.rollers.push({ x: up + r, y: upper, r: Math.max(2, r - 2) })
      } else {
        to(up, upper + r)
        path += `Q${round(up)} ${line} ${round(up + r)} ${line}`
        drawing.rollers.push({ x: up + r, y: line + r + 0.5, r: Math.max(2, r - 2) })
      }
    }
    to(x + cell, line)
    const box = { x: middle - inner / 2, width: inner }
    if (station.hasBath) drawing.tanks.push({ station: index, y: tankTop, height: tankBottom - tankTop, ...box })
    else if (station.kind === 'dryer') drawing.cabinets.push({ y: top - 12, height: tankBottom - top + 12, ...box })
  })
  drawing.path = path
  return drawing
}

const round = (value: number): number => Math.round(value * 10) / 10
