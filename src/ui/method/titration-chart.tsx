import { useRef } from 'preact/hooks'
import type { CurvePoint } from '../../rounds/method/curve.ts'
import { chartHeight, useWidth } from '../use-width.ts'

const inset = { left: 40, right: 10, top: 10, bottom: 22 }

interface TitrationChartProps {
  points: readonly CurvePoint[]
  secondDerivative: number | undefined
  gran: number | undefined
  name: string
}

/** Meter against volume, with the slope behind it and both end points: the second derivative's solid, Gran's dashed. */
export const TitrationChart = ({ points, secondDerivative, gran, name }: TitrationChartProps) => {
  const svg = useRef<SVGSVGElement>(null)
  const width = useWidth(svg)
  const height = chartHeight(width, { least: 190 })
  const volumes = points.map(({ millilitres }) => millilitres)
  const readings = points.map(({ reading }) => reading)
  const [left, right] = [Math.min(...volumes), Math.max(...volumes)]
  const [low, high] = [Math.min(...readings), Math.max(...readings)]
  const pad = (high - low || 1) * 0.06
  const x = (at: number): number => inset.left + ((at - left) / (right - left || 1)) * (width - inset.left - inset.right)
  const y = (at: number): number => inset.top + ((high + pad - at) / (high - low + 2 * pad)) * (height - inset.top - inset.bottom)
  const slopes = points.slice(1).map((point, index) => {
    const before = points[index]!
    return { at: (point.millilitres + before.millilitres) / 2, slope: Math.abs((point.reading - before.reading) / (point.millilitres - before.millilitres)) }
  })
  const steepest = Math.max(...slopes.map(({ slope }) => slope), 1e-12)
  const foot = height - inset.bottom
  const line = (list: readonly (readonly [number, number])[]): string => list.map(([a, b]) => `${a.toFixed(1)},${b.toFixed(1)}`).join(' ')
  const end = (at: number | undefined, kind: string) =>
    at !== undefined && at >= left && at <= right ? <line class={kind} x1={x(at)} x2={x(at)} y1={inset.top} y2={foot} /> : null
  return (
    <svg ref={svg} class="titration-chart" viewBox={`0 0 ${width} ${height}`} role="img" aria-label={name}>
      <rect class="frame" x={inset.left} y={inset.top} width={width - inset.left - inset.right} height={foot - inset.top} />
      {[low, high].map((at) => <text key={at} x={inset.left - 4} y={y(at) + 4} text-anchor="end">{String(Number(at.toFixed(2))).replace('-', '−')}</text>)}
      <text x={inset.left} y={height - 6}>{left} mL</text>
      <text x={width - inset.right} y={height - 6} text-anchor="end">{right} mL</text>
      <polyline class="slope" points={line(slopes.map(({ at, slope }) => [x(at), foot - (slope / steepest) * (foot - inset.top) * 0.9] as const))} />
      {end(secondDerivative, 'end')}
      {end(gran, 'end gran')}
      <polyline class="curve" points={line(points.map(({ millilitres, reading }) => [x(millilitres), y(reading)] as const))} />
      {points.map(({ millilitres, reading }) => <circle key={millilitres} cx={x(millilitres)} cy={y(reading)} r="2.5" />)}
    </svg>
  )
}
