import { judge, type Limits } from '../../plan/limits.ts'
import { gaugeScale } from './gauge-scale.ts'
import './spark.css'

const width = 160
const height = 44

/** The last readings against their limits, as small as a word; the newest is the large one, told apart by its shape as well. */
export const Spark = ({ values, limits, name }: { values: readonly number[]; limits: Limits; name: string }) => {
  const scale = gaugeScale(limits)
  const y = (value: number): number => Math.round((height / 2) * (1 - scale.share(value)) * 10) / 10
  const x = (index: number): number => (values.length < 2 ? width - 8 : 6 + (index / (values.length - 1)) * (width - 14))
  const rule = (at: number | undefined, kind: string) => (at === undefined ? null : <line class={kind} x1="0" x2={width} y1={y(at)} y2={y(at)} />)
  const newest = values.at(-1)
  return (
    <svg class="spark" viewBox={`0 0 ${width} ${height}`} role="img" aria-label={name}>
      {rule(limits.actionHigh, 'action')}
      {rule(limits.warningHigh, 'warning')}
      {rule(limits.aim, 'aim')}
      {rule(limits.warningLow, 'warning')}
      {rule(limits.actionLow, 'action')}
      <polyline points={values.map((value, index) => `${x(index)},${y(value)}`).join(' ')} />
      {values.slice(0, -1).map((value, index) => <circle key={index} cx={x(index)} cy={y(value)} r="2" />)}
      {newest === undefined ? null : <rect class={judge(limits, newest).verdict} x={x(values.length - 1) - 4} y={y(newest) - 4} width="8" height="8" />}
    </svg>
  )
}
