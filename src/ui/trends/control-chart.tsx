import type { Limits } from '../../plan/limits.ts'
import type { Point } from './series.ts'
import './control-chart.css'

const width = 328
const height = 200
const inset = { left: 40, right: 8, top: 12, bottom: 22 }

interface ControlChartProps {
  points: readonly Point[]
  limits: Limits
  adds: readonly number[]
  chosen: number
  onChoose(index: number): void
  name: string
  text(value: number): string
  time(time: number): string
}

/** Readings against time between the plan's limits. Points differ by shape as well as colour; the table beside it says the same. */
export const ControlChart = ({ points, limits, adds, chosen, onChoose, name, text, time }: ControlChartProps) => {
  const lines = [limits.actionLow, limits.warningLow, limits.aim, limits.warningHigh, limits.actionHigh].filter((it) => it !== undefined)
  const values = points.map(({ value }) => value)
  const low = Math.min(...values, ...lines)
  const high = Math.max(...values, ...lines)
  const pad = (high - low || Math.abs(high) || 1) * 0.06
  const first = points[0]!.time
  const last = points.at(-1)!.time
  const x = (at: number): number =>
    inset.left + (last === first ? 0.5 : (at - first) / (last - first)) * (width - inset.left - inset.right - 12) + 6
  const y = (value: number): number => inset.top + ((high + pad - value) / (high - low + 2 * pad)) * (height - inset.top - inset.bottom)
  const limit = (at: number | undefined, kind: string) =>
    at === undefined ? null : (
      <g>
        <line class={`limit ${kind}`} x1={inset.left} x2={width - inset.right} y1={y(at)} y2={y(at)} />
        <text x={inset.left - 4} y={y(at) + 4} text-anchor="end">{text(at)}</text>
      </g>
    )
  const nearest = (event: PointerEvent): void => {
    const box = (event.currentTarget as SVGSVGElement).getBoundingClientRect()
    const at = ((event.clientX - box.left) / box.width) * width
    let best = 0
    points.forEach((point, index) => {
      if (Math.abs(x(point.time) - at) < Math.abs(x(points[best]!.time) - at)) best = index
    })
    onChoose(best)
  }
  const picked = points[chosen]
  return (
    <svg
      class="control-chart"
      viewBox={`0 0 ${width} ${height}`}
      role="img"
      aria-label={name}
      onPointerDown={nearest}
      onPointerMove={(event) => {
        if (event.buttons || event.pointerType === 'touch') nearest(event)
      }}
    >
      <rect class="frame" x={inset.left} y={inset.top} width={width - inset.left - inset.right} height={height - inset.top - inset.bottom} />
      {limit(limits.actionHigh, 'action')}
      {limit(limits.warningHigh, 'warning')}
      {limit(limits.aim, 'aim')}
      {limit(limits.warningLow, 'warning')}
      {limit(limits.actionLow, 'action')}
      {adds.filter((at) => at >= first && at <= last).map((at) => <path key={at} class="add" d={`M${x(at)} ${height - inset.bottom - 9}l5 9h-10z`} />)}
      <polyline class="line" points={points.map((point) => `${x(point.time).toFixed(1)},${y(point.value).toFixed(1)}`).join(' ')} />
      {picked ? <line class="ray" x1={x(picked.time)} x2={x(picked.time)} y1={inset.top} y2={height - inset.bottom} /> : null}
      {points.map((point) =>
        point.verdict === 'ACT' ? (
          <rect key={point.id} class="point ACT" x={x(point.time) - 4} y={y(point.value) - 4} width="8" height="8" />
        ) : (
          <circle key={point.id} class={`point ${point.verdict}`} cx={x(point.time)} cy={y(point.value)} r={point.verdict === 'WARN' ? 3.5 : 2.5} />
        ),
      )}
      {picked ? <circle class="chosen" cx={x(picked.time)} cy={y(picked.value)} r="7" /> : null}
      <text x={inset.left} y={height - 6}>{time(first)}</text>
      <text x={width - inset.right} y={height - 6} text-anchor="end">{time(last)}</text>
    </svg>
  )
}
