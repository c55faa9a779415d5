import { useRef } from 'preact/hooks'
import type { Limits } from '../../plan/limits.ts'
import type { Drifted } from '../../projections/drift.ts'
import { planLines } from '../trends/pictures.ts'
import { chartHeight, useWidth } from '../use-width.ts'

const inset = { left: 42, right: 10, top: 10, bottom: 22 }

interface DriftChartProps {
  course: Drifted['course']
  limits: Limits
  /** Film after which a limit is met. */
  meets: number | undefined
  name: string
  text(value: number): string
  lengthText(metres: number): string
}

export const DriftChart = ({ course, limits, meets, name, text, lengthText }: DriftChartProps) => {
  const svg = useRef<SVGSVGElement>(null)
  const width = useWidth(svg)
  const height = chartHeight(width, { least: 150, most: 260 })
  const lines = planLines(limits)
  const values = [...course.map(({ gramsPerLitre }) => gramsPerLitre), ...lines.map(({ at }) => at)]
  const [low, high] = [Math.min(...values), Math.max(...values)]
  const pad = (high - low || 1) * 0.06
  const most = course.at(-1)!.metres || 1
  const x = (metres: number): number => inset.left + (metres / most) * (width - inset.left - inset.right)
  const y = (value: number): number => inset.top + ((high + pad - value) / (high - low + 2 * pad)) * (height - inset.top - inset.bottom)
  const foot = height - inset.bottom
  return (
    <svg ref={svg} class="control-chart" viewBox={`0 0 ${width} ${height}`} role="img" aria-label={name}>
      <rect class="frame" x={inset.left} y={inset.top} width={width - inset.left - inset.right} height={foot - inset.top} />
      {lines.map(({ kind, at }) => (
        <g key={`${kind} ${at}`}>
          <line class={`limit ${kind}`} x1={inset.left} x2={width - inset.right} y1={y(at)} y2={y(at)} />
          <text x={inset.left - 4} y={y(at) + 4} text-anchor="end">{text(at)}</text>
        </g>
      ))}
      <path class="line main" d={course.map(({ metres, gramsPerLitre }, index) => `${index ? 'L' : 'M'}${x(metres).toFixed(1)} ${y(gramsPerLitre).toFixed(1)}`).join('')} />
      {meets === undefined ? null : <line class="ray" x1={x(meets)} x2={x(meets)} y1={inset.top} y2={foot} />}
      <text x={inset.left} y={height - 6}>{lengthText(0)}</text>
      <text x={width - inset.right} y={height - 6} text-anchor="end">{lengthText(most)}</text>
    </svg>
  )
}
