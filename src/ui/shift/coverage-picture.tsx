import { useLayoutEffect, useRef, useState } from 'preact/hooks'
import type { CoveredOccurrence } from '../../projections/coverage.ts'
import type { OccurrenceStatus } from '../../projections/occurrences.ts'
import './coverage-picture.css'

/** On paper, where two columns stand beside each other. */
const printed = 320
const lane = 13
/** Short names of stations stand before their lanes. */
const left = 54
const right = 4

/** Filled: done. Ring: late. Dash: left out with a reason. Cross: missed. Dotted ring: open now. */
export const StatusMark = ({ status, x, y }: { status: OccurrenceStatus; x: number; y: number }) => {
  switch (status) {
    case 'done':
      return <circle class="done" cx={x} cy={y} r="3" />
    case 'late':
      return <circle class="late" cx={x} cy={y} r="3.25" />
    case 'skipped':
    case 'machineStopped':
    case 'missedWithReason':
      return <path class="left-out" d={`M${x - 3} ${y}h6`} />
    case 'missed':
      return <path class="missed" d={`M${x - 3} ${y - 3}l6 6 M${x + 3} ${y - 3}l-6 6`} />
    case 'pending':
    case 'overdue':
      return <circle class="open" cx={x} cy={y} r="3.5" />
  }
}

export interface Lane {
  check: string
  /** Its short name. */
  station: string
}

/** One machine's shift at a glance: a lane for each check, by station, a mark where it was due. */
export const CoveragePicture = ({ occurrences, lanes, from, to, now, name, timeText }: { occurrences: readonly CoveredOccurrence[]; lanes: readonly Lane[]; from: number; to: number; now: number; name: string; timeText(time: number): string }) => {
  const picture = useRef<SVGSVGElement>(null)
  const [width, setWidth] = useState(printed)
  // As wide as its place, so that its words are as large as any.
  useLayoutEffect(() => {
    const measure = (): void => setWidth(Math.round(picture.current!.getBoundingClientRect().width) || printed)
    const print = (): void => setWidth(printed)
    measure()
    const observer = new ResizeObserver(measure)
    observer.observe(picture.current!)
    addEventListener('beforeprint', print)
    addEventListener('afterprint', measure)
    return () => {
      observer.disconnect()
      removeEventListener('beforeprint', print)
      removeEventListener('afterprint', measure)
    }
  }, [])
  const height = lanes.length * lane + 22
  const x = (time: number): number => left + ((Math.max(from, Math.min(to, time)) - from) / (to - from)) * (width - left - right)
  const y = new Map(lanes.map(({ check }, index) => [check, index * lane + lane / 2 + 2]))
  return (
    <svg ref={picture} class="coverage-picture" viewBox={`0 0 ${width} ${height}`} role="img" aria-label={name}>
      {lanes.map(({ check }) => <line key={check} class="lane" x1={left} x2={width - right} y1={y.get(check)} y2={y.get(check)} />)}
      {lanes.map(({ station }, index) =>
        station === lanes[index - 1]?.station ? null : (
          <g key={index}>
            {index > 0 ? <line class="border" x1={0} x2={width} y1={index * lane + 2} y2={index * lane + 2} /> : null}
            <text class="station" x={0} y={index * lane + lane / 2 + 5.5}>{station}</text>
          </g>
        ),
      )}
      {now > from && now < to ? <line class="now" x1={x(now)} x2={x(now)} y1={0} y2={height - 16} /> : null}
      {occurrences.map((it) => <StatusMark key={`${it.check} ${it.dueAt}`} status={it.status} x={x(it.dueAt)} y={y.get(it.check) ?? 0} />)}
      <text x={left} y={height - 4}>{timeText(from)}</text>
      <text x={width - right} y={height - 4} text-anchor="end">{timeText(to)}</text>
    </svg>
  )
}
