import { useEffect, useRef, useState } from 'preact/hooks'
import type { Station } from '../../plan/machine.ts'
import { strand } from './film-strand.ts'
import './film-path.css'

/** The most pressing thing at a station. */
export type StationMark = 'act' | 'warn' | 'late' | 'due'

export interface PathStation {
  station: Station
  mark?: StationMark | undefined
  /** How full the tank stands, 0 to 1. */
  level: number
  href: string
  /** Name and state in words, for a screen reader: the drawing as a list. */
  says: string
}

const narrowestCell = 50

const MarkSign = ({ kind, x }: { kind: StationMark; x: number }) => {
  const y = 11
  if (kind === 'act')
    return (
      <g>
        <rect class="mark act" x={x - 9} y={y - 9} width="18" height="18" rx="3" />
        <path class="sign act" d={`M${x} ${y - 4.5}v5 M${x} ${y + 4.4}v.1`} />
      </g>
    )
  if (kind === 'warn')
    return (
      <g>
        <path class="mark warn" d={`M${x} ${y - 9}l10 17h-20z`} stroke-linejoin="round" />
        <path class="sign warn" d={`M${x} ${y - 2}v4`} />
      </g>
    )
  return (
    <g>
      <circle class={`mark ${kind}`} cx={x} cy={y} r="8.5" />
      <path class={`sign ${kind}`} d={`M${x} ${y - 4.5}v4.5l3.5 2`} />
    </g>
  )
}

/** The machine as its film sees it: the strand over and under the rollers, through the tanks of this plan. Each station is a target. */
export const FilmPath = ({ stations, held, name }: { stations: readonly PathStation[]; held: boolean; name: string }) => {
  const box = useRef<HTMLDivElement>(null)
  const [width, setWidth] = useState(312)
  useEffect(() => {
    const observer = new ResizeObserver(([entry]) => {
      if (entry) setWidth(Math.round(entry.contentRect.width))
    })
    observer.observe(box.current!)
    return () => observer.disconnect()
  }, [])
  const rowCount = Math.ceil(stations.length / Math.max(1, Math.floor(width / narrowestCell)))
  const perRow = Math.ceil(stations.length / rowCount)
  const rows = Array.from({ length: rowCount }, (_, row) => stations.slice(row * perRow, (row + 1) * perRow))
  return (
    <div class={`film-path${held ? ' held' : ''}`} ref={box}>
      {rows.map((row) => {
        const drawing = strand(row.map(({ station }) => ({ kind: station.kind, hasBath: !!station.bath, pathMetres: station.pathMetres ?? 1 })), width)
        const cell = width / row.length
        return (
          <div class="run" key={row[0]?.station.id}>
            <svg viewBox={`0 0 ${drawing.width} ${drawing.height}`} aria-hidden="true" focusable="false">
              {drawing.tanks.map((tank) => {
                const depth = tank.height * row[tank.station]!.level
                return (
                  <g key={tank.x}>
                    <rect class="glass" x={tank.x} y={tank.y} width={tank.width} height={tank.height} />
                    <rect class="liquid" x={tank.x} y={tank.y + tank.height - depth} width={tank.width} height={depth} />
                    <path class="tank" d={`M${tank.x} ${tank.y}v${tank.height}h${tank.width}v-${tank.height}`} />
                  </g>
                )
              })}
              {drawing.cabinets.map((it) => <rect key={it.x} class="cabinet" rx="4" {...it} />)}
              <path class="film" d={drawing.path} />
              {drawing.rollers.map((it) => <circle key={`${it.x} ${it.y}`} class="roller" cx={it.x} cy={it.y} r={it.r} />)}
              {drawing.reels.map((it) => (
                <g key={it.x}>
                  <circle class="reel" cx={it.x} cy={it.y} r={it.r} />
                  <circle class="reel" cx={it.x} cy={it.y} r={it.r / 3} />
                </g>
              ))}
              {row.map(({ station, mark }, index) => (mark ? <MarkSign key={station.id} kind={mark} x={(index + 0.5) * cell} /> : null))}
            </svg>
            <ul class="stations" aria-label={name} style={{ '--run-height': `${drawing.height}px` }}>
              {row.map(({ station, mark, href, says }) => (
                <li key={station.id}>
                  <a href={href} aria-label={says} class={mark ? 'marked' : undefined}>{station.short}</a>
                </li>
              ))}
            </ul>
          </div>
        )
      })}
    </div>
  )
}
