import type { StationKind } from '../../plan/machine.ts'

/** What the drawing knows of a station. */
export interface StrandStation {
  kind: StationKind
  pathMetres: number
}

/** Places where the strand runs through liquid, whether or not the plan describes it. */
const wet: ReadonlySet<StationKind> = new Set(['developer', 'stop', 'rinse', 'fixing', 'wash'])

interface Circle {
  x: number
  y: number
  r: number
}
interface Box {
  x: number
  y: number
  width: number
  height: number
}

export interface Strand {
  width: number
  height: number
  /** The film, as an SVG path. */
  path: string
  rollers: Circle[]
  reels: Circle[]
  sprockets: Circle[]
  /** One for each station with liquid. */
  tanks: (Box & { station: number })[]
  /** Closed cabinets without liquid: the dryer. */
  cabinets: Box[]
  /** The bar that carries the lower rollers of an elevator. */
  carriages: Box[]
  /** Wiper blades on both sides of the strand, as SVG paths. */
  blades: string[]
}

const line = 31
const turn = 5
const topRoller = line + turn
const lowRoller = 90
const tank = { y: 49, bottom: 102 }

/** Runs of the strand up and down: long paths fold more often. */
const loopsOf = (station: StrandStation, longest: number, room: number): number => {
  const wanted = station.kind === 'elevator' ? 2 : Math.max(1, Math.round((station.pathMetres / longest) * 3))
  return Math.max(1, Math.min(wanted, Math.floor((room + 2 * turn) / (4 * turn))))
}

/**
 * The film's way over and under the rollers through one row of stations, each in a cell of equal width.
 * It comes in at the left on the height of the top rollers and leaves at the right, so that rows join.
 */
export const strand = (stations: readonly StrandStation[], width: number): Strand => {
  const cell = width / stations.length
  const longest = Math.max(1, ...stations.map(({ pathMetres }) => pathMetres))
  const drawing: Strand = {
    width, height: tank.bottom + 2, path: '', rollers: [], reels: [], sprockets: [], tanks: [], cabinets: [], carriages: [], blades: [],
  }
  const pen = new Pen(stations[0]?.kind === 'feed' ? cell / 2 : -overhang)
  stations.forEach((station, index) => {
    const middle = (index + 0.5) * cell
    switch (station.kind) {
      case 'feed':
      case 'takeOff':
        drawing.reels.push({ x: middle, y: line + 17, r: 17 })
        pen.to(station.kind === 'feed' ? (index + 1) * cell : middle, line)
        return
      case 'drive':
        drawing.sprockets.push({ x: middle, y: line + 10, r: 8 })
        pen.to((index + 1) * cell, line)
        return
      case 'squeegee':
        drawing.blades.push(`M${middle - 4} ${line - 10}l4 8l4 -8z`, `M${middle - 4} ${line + 10}l4 -8l4 8z`)
        pen.to((index + 1) * cell, line)
        return
      default:
        drawLoops(drawing, pen, station, index, middle, cell, longest)
    }
  })
  if (stations.at(-1)?.kind !== 'takeOff') pen.to(width + overhang, line)
  drawing.path = pen.path
  return drawing
}

/** How far the strand runs over the ends of a row, so that rows seem to join. */
export const overhang = 12

const drawLoops = (drawing: Strand, pen: Pen, station: StrandStation, index: number, middle: number, cell: number, longest: number): void => {
  const inner = Math.min(cell - 8, 76)
  const loops = loopsOf(station, longest, inner - 10)
  const spacing = Math.max(turn, Math.min(7, (inner - 12) / (loops * 4 - 2)))
  const first = middle - (loops * 2 - 1) * spacing
  pen.to(first - turn, line)
  pen.corner(first, line, first, line + turn)
  drawing.rollers.push({ x: first - turn, y: topRoller, r: 3 })
  for (let loop = 0; loop < loops; loop++) {
    const down = first + loop * 4 * spacing
    const up = down + 2 * spacing
    pen.to(down, lowRoller)
    pen.arc(spacing, up, lowRoller, 'under')
    drawing.rollers.push({ x: down + spacing, y: lowRoller, r: spacing - 2 })
    if (loop < loops - 1) {
      pen.to(up, line + spacing)
      pen.arc(spacing, up + 2 * spacing, line + spacing, 'over')
      drawing.rollers.push({ x: up + spacing, y: line + spacing, r: spacing - 2 })
    } else {
      pen.to(up, line + turn)
      pen.corner(up, line, up + turn, line)
      drawing.rollers.push({ x: up + turn, y: topRoller, r: 3 })
    }
  }
  pen.to((index + 1) * cell, line)
  const box = { x: middle - inner / 2, width: inner }
  if (wet.has(station.kind)) drawing.tanks.push({ station: index, y: tank.y, height: tank.bottom - tank.y, ...box })
  else if (station.kind === 'elevator') drawing.carriages.push({ x: first - 2, width: (loops * 4 - 2) * spacing + 4, y: lowRoller - 1.5, height: 3 })
  else drawing.cabinets.push({ y: line - 9, height: tank.bottom - line + 9, ...box })
}

class Pen {
  path: string
  constructor(x: number) {
    this.path = `M${round(x)} ${line}`
  }
  to(x: number, y: number): void {
    this.path += `L${round(x)} ${round(y)}`
  }
  /** A quarter turn over the roller beside it. */
  corner(controlX: number, controlY: number, x: number, y: number): void {
    this.path += `Q${round(controlX)} ${round(controlY)} ${round(x)} ${round(y)}`
  }
  arc(r: number, x: number, y: number, way: 'under' | 'over'): void {
    this.path += `A${round(r)} ${round(r)} 0 0 ${way === 'under' ? 0 : 1} ${round(x)} ${round(y)}`
  }
}

const round = (value: number): number => Math.round(value * 10) / 10
