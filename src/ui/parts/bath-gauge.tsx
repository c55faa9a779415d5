import { judge, type Limits } from '../../plan/limits.ts'
import { gaugeScale } from './gauge-scale.ts'
import './bath-gauge.css'

const height = 180
const left = 10
const width = 32

interface BathGaugeProps {
  limits: Limits
  /** Nothing saved yet: the glass is empty and only shows where it should stand. */
  value?: number | undefined
  /** What it shows, in words. */
  name: string
}

/** The bath as a column of glass: aim in the middle, action limits ruled across, warning limits dashed, the reading at the pointer. */
export const BathGauge = ({ limits, value, name }: BathGaugeProps) => {
  const scale = gaugeScale(limits)
  const y = (at: number): number => Math.round((height / 2) * (1 - scale.share(at)) * 10) / 10
  const level = value === undefined ? height / 2 : y(value)
  const verdict = value === undefined ? 'none' : judge(limits, value).verdict
  const high = limits.warningHigh ?? limits.actionHigh
  const low = limits.warningLow ?? limits.actionLow
  const top = high === undefined ? 0 : y(high)
  const bottom = low === undefined ? height : y(low)
  const across = (at: number | undefined, kind: 'action' | 'warning') =>
    at === undefined ? null : <line class={kind} x1={kind === 'action' ? left - 7 : left} x2={left + width + (kind === 'action' ? 7 : 0)} y1={y(at)} y2={y(at)} />
  return (
    <svg class="gauge" viewBox={`0 -3 64 ${height + 6}`} role="img" aria-label={name}>
      <rect class="glass" x={left} y={0} width={width} height={height} rx="5" />
      {value === undefined ? (
        <rect class="good" x={left} width={width} y={top} height={bottom - top} rx="3" />
      ) : (
        <>
          <path class="liquid" d={`M${left} ${level}h${width}V${height - 5}q0 5 -5 5h-${width - 10}q-5 0 -5 -5z`} />
          <line class="surface" x1={left} x2={left + width} y1={level} y2={level} />
        </>
      )}
      {across(limits.actionHigh, 'action')}
      {across(limits.warningHigh, 'warning')}
      {across(limits.warningLow, 'warning')}
      {across(limits.actionLow, 'action')}
      <path class="aim" d={`M${left - 7} ${height / 2}h11 M${left + width - 4} ${height / 2}h4`} />
      <rect class="edge" x={left} y={0} width={width} height={height} rx="5" />
      {verdict === 'none' ? null : <path class={`pointer ${verdict}`} d={`M${left + width + 2} ${level}l13 -8v16z`} />}
    </svg>
  )
}
