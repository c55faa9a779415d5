import { useLayoutEffect, useRef, useState } from 'preact/hooks'
import type { Station } from '../../plan/machine.ts'
import { strand, type Strand } from './film-strand.ts'
import { MarkSign, type StationMark } from './mark-sign.tsx'
import './film-path.css'

export interface PathStation {
  station: Station
  mark?: StationMark | undefined
  /** How full the tank stands, 0 to 1; undefined where nobody has looked. */
  level: number | undefined
  href: string
  /** Name and state in words, for a screen reader: the drawing as a list. */
  says: string
}

/** A gloved fingertip and the shortest names still fit; names that are set larger take more. */
const narrowestCell = (): number => Math.max(48, 3 * parseFloat(getComputedStyle(document.documentElement).fontSize))
const usualLevel = 0.8

const Tank = ({ box, level }: { box: Strand['tanks'][number]; level: number | undefined }) => {
  const depth = box.height * (level ?? usualLevel)
  const surface = box.y + box.height - depth
  return (
    <g>
      <rect class="liquid" x={box.x} y={surface} width={box.width} height={depth} />
      <path class={`surface${level === undefined ? ' unknown' : ''}`} d={`M${box.x} ${surface}h${box.width}`} />
      <path class="tank" d={`M${box.x} ${box.y}v${box.height - 4}q0 4 4 4h${box.width - 8}q4 0 4 -4v-${box.height - 4}`} />
    </g>
  )
}

const Reel = ({ x, y, r }: { x: number; y: number; r: number }) => (
  <g class="reel">
    <circle cx={x} cy={y} r={r} />
    <circle class="wound" cx={x} cy={y} r={r - 3.5} />
    <circle class="hub" cx={x} cy={y} r={r / 3.2} />
  </g>
)

const Row = ({ stations, width, name, first }: { stations: readonly PathStation[]; width: number; name: string; first: boolean }) => {
  const drawing = strand(stations.map(({ station }) => ({ kind: station.kind, pathMetres: station.pathMetres ?? 1 })), width)
  const cell = width / stations.length
  return (
    <div class="run">
      <svg viewBox={`0 0 ${drawing.width} ${drawing.height}`} width={drawing.width} height={drawing.height} aria-hidden="true" focusable="false">
        {drawing.tanks.map((it) => <rect key={it.x} class="glass" x={it.x} y={it.y} width={it.width} height={it.height} rx="4" />)}
        {drawing.cabinets.map((it) => (
          <g key={it.x} class="cabinet">
            <rect rx="5" {...it} />
            <path d={[0.3, 0.55, 0.8].map((share) => `M${it.x + 5} ${it.y + it.height * share}q${(it.width - 10) / 4} -6 ${(it.width - 10) / 2} 0t${(it.width - 10) / 2} 0`).join('')} />
          </g>
        ))}
        <path class="film" d={drawing.path} />
        <path class="holes" d={drawing.path} />
        {drawing.tanks.map((it) => <Tank key={it.x} box={it} level={stations[it.station]!.level} />)}
        {drawing.carriages.map((it) => <rect key={it.x} class="carriage" rx="1.5" {...it} />)}
        {drawing.rollers.map((it) => <circle key={`${it.x} ${it.y}`} class="roller" cx={it.x} cy={it.y} r={it.r} />)}
        {drawing.sprockets.map((it) => (
          <g key={it.x} class="sprocket">
            <circle class="teeth" cx={it.x} cy={it.y} r={it.r} />
            <circle cx={it.x} cy={it.y} r={it.r - 2} />
          </g>
        ))}
        {drawing.blades.map((it) => <path key={it} class="blade" d={it} />)}
        {drawing.reels.map((it) => <Reel key={it.x} {...it} />)}
        {stations.map(({ station, mark }, index) => (mark ? <MarkSign key={station.id} kind={mark} x={(index + 0.5) * cell} /> : null))}
      </svg>
      <ul class="stations" aria-label={first ? name : undefined} style={{ '--run-height': `${drawing.height}px`, width: `${drawing.width}px` }}>
        {stations.map(({ station, mark, href, says }) => (
          <li key={station.id}>
            <a href={href} aria-label={says} class={mark ? 'marked' : undefined}>{station.short}</a>
          </li>
        ))}
      </ul>
    </div>
  )
}

/** The machine as its film sees it: the strand over and under the rollers, through the tanks of this plan. Each station is a target. */
export const FilmPath = ({ stations, state, name }: { stations: readonly PathStation[]; state: 'runs' | 'stands' | 'held'; name: string }) => {
  const box = useRef<HTMLDivElement>(null)
  const [width, setWidth] = useState(304)
  const [narrowest, setNarrowest] = useState(narrowestCell)
  useLayoutEffect(() => {
    const measure = (): void => {
      setWidth(Math.floor(box.current!.clientWidth) || 304)
      setNarrowest(narrowestCell)
    }
    measure()
    const observer = new ResizeObserver(measure)
    observer.observe(box.current!)
    // Grows with the text when that is set larger.
    const names = box.current!.querySelector('.stations')
    if (names) observer.observe(names)
    return () => observer.disconnect()
  }, [])
  const rowCount = Math.ceil(stations.length / Math.max(1, Math.floor(width / narrowest)))
  const perRow = Math.ceil(stations.length / rowCount)
  const rows = Array.from({ length: rowCount }, (_, row) => stations.slice(row * perRow, (row + 1) * perRow))
  return (
    <div class={`film-path ${state}`} ref={box}>
      {rows.map((row, index) => <Row key={row[0]?.station.id} stations={row} width={(width * row.length) / perRow} name={name} first={index === 0} />)}
    </div>
  )
}
