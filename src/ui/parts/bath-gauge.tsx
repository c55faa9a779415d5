import { judge, type Limits } from '../../plan/limits.ts'
import './bath-gauge.css'

const height = 180
const left = 8
const width = 30

/** Value to height in the column; what lies beyond the column's ends stays at its end, where the pointer says so. */
export const gaugeScale = (limits: Limits): ((value: number) => number) => {
  const reach = Math.max(
    ...[limits.actionHigh, limits.actionLow, limits.warningHigh, limits.warningLow].filter((it) => it !== undefined).map((it) => Math.abs(it - limits.aim)),
    Math.abs(limits.aim) * 1e-3,
    1e-6,
  )
  const span = reach * 1.6
  return (value) => {
    const share = (value - limits.aim) / span
    return height / 2 - Math.max(-0.97, Math.min(0.97, share)) * (height / 2)
  }
}

/** The bath as a column of glass: aim in the middle, action limits ruled across, warning limits dashed, the reading at the pointer. */
export const BathGauge = ({ limits, value, name }: { limits: Limits; value?: number | undefined; name: string }) => {
  const y = gaugeScale(limits)
  const level = value === undefined ? height / 2 : y(value)
  const verdict = value === undefined ? undefined : judge(limits, value).verdict
  const across = (at: number | undefined, kind: 'action' | 'warning') =>
    at === undefined ? null : <line class={kind} x1={kind === 'action' ? left - 6 : left} x2={left + width + (kind === 'action' ? 6 : 0)} y1={y(at)} y2={y(at)} />
  return (
    <svg class="gauge" viewBox={`0 -4 60 ${height + 8}`} role="img" aria-label={name}>
      <rect class="glass" x={left} y={0} width={width} height={height} />
      <rect class="liquid" x={left} y={level} width={width} height={height - level} />
      {across(limits.actionHigh, 'action')}
      {across(limits.warningHigh, 'warning')}
      {across(limits.warningLow, 'warning')}
      {across(limits.actionLow, 'action')}
      <line class="aim" x1={left - 6} x2={left + 4} y1={height / 2} y2={height / 2} />
      <line class="aim" x1={left + width - 4} x2={left + width + 6} y1={height / 2} y2={height / 2} />
      <rect class="edge" x={left} y={0} width={width} height={height} rx="2" />
      {verdict ? <path class={`pointer ${verdict}`} d={`M${left + width + 2} ${level}l12 -7v14z`} /> : null}
    </svg>
  )
}
