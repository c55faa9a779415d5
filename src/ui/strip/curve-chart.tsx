import { useRef } from 'preact/hooks'
import { chartHeight, useWidth } from '../use-width.ts'
import './curve-chart.css'

/** One curve: [log exposure, density] in order of exposure. */
export type CurvePoints = readonly (readonly [logExposure: number, density: number])[]

interface CurveChartProps {
  strip: CurvePoints
  /** The aims of the batch, dashed. */
  reference?: CurvePoints | undefined
  /** Strips before this one, thin. */
  past?: readonly CurvePoints[]
  /** Where the straight part was taken: its slope, the density at log exposure 0, from and to. */
  straight?: { gamma: number; intercept: number; from: number; to: number } | undefined
  /** Log exposure and density of the speed point. */
  speedPoint?: readonly [number, number] | undefined
  /** The step under the thumb, drawn hollow. */
  here?: number | undefined
  /** Exposures to leave room for while the strip is still being keyed. */
  exposures?: readonly number[]
  /** Beside a pad there is less room. */
  isLow?: boolean
  name: string
}

const inset = { left: 30, right: 8, top: 8, bottom: 20 }

/** Density against log exposure. Curves differ by stroke as well as by shade: the strip bold with points, the reference dashed, earlier strips thin. */
export const CurveChart = ({ strip, reference = [], past = [], straight, speedPoint, here, exposures = [], isLow = false, name }: CurveChartProps) => {
  const svg = useRef<SVGSVGElement>(null)
  const width = useWidth(svg)
  const height = isLow ? 90 : chartHeight(width, { least: 190 })
  const all = [strip, reference, ...past].flat()
  const exposed = [...all.map(([x]) => x), ...exposures]
  const low = Math.min(...exposed)
  const high = Math.max(...exposed, low + 1)
  const most = Math.max(2, ...all.map(([, density]) => Math.ceil(density * 2) / 2))
  const x = (at: number): number => inset.left + 8 + ((at - low) / (high - low)) * (width - inset.left - inset.right - 16)
  const y = (density: number): number => inset.top + (1 - density / most) * (height - inset.top - inset.bottom)
  const line = (points: CurvePoints): string => points.map(([at, density]) => `${x(at).toFixed(1)},${y(density).toFixed(1)}`).join(' ')
  const grid = Array.from({ length: Math.floor(most) + 1 }, (_, density) => density)
  const marks = Array.from({ length: Math.floor(high) - Math.ceil(low) + 1 }, (_, index) => Math.ceil(low) + index)
  return (
    <svg ref={svg} class="curve-chart" viewBox={`0 0 ${width} ${height}`} role="img" aria-label={name}>
      <rect class="frame" x={inset.left} y={inset.top} width={width - inset.left - inset.right} height={height - inset.top - inset.bottom} />
      {grid.map((density) => (
        <g key={density}>
          {density > 0 && density < most ? <line class="grid" x1={inset.left} x2={width - inset.right} y1={y(density)} y2={y(density)} /> : null}
          <text x={inset.left - 5} y={y(density) + 4} text-anchor="end">{density}</text>
        </g>
      ))}
      {marks.map((at) => (
        <text key={at} x={x(at)} y={height - 6} text-anchor="middle">{String(at).replace('-', '−')}</text>
      ))}
      {past.map((points, index) => <polyline key={index} class="past" points={line(points)} />)}
      {reference.length ? <polyline class="reference" points={line(reference)} /> : null}
      {straight ? (
        <polyline class="tangent" points={line([straight.from - 0.15, straight.to + 0.15].map((at) => [at, straight.intercept + straight.gamma * at] as const))} />
      ) : null}
      <polyline class="strip" points={line(strip)} />
      {strip.map(([at, density]) => <circle key={at} class="point" cx={x(at)} cy={y(density)} r="2.5" />)}
      {speedPoint ? <path class="speed-point" d={`M${x(speedPoint[0])} ${y(speedPoint[1]) - 8}v16M${x(speedPoint[0]) - 6} ${y(speedPoint[1])}h12`} /> : null}
      {here === undefined ? null : <path class="speed-point" d={`M${x(here)} ${height - inset.bottom}v-10`} />}
    </svg>
  )
}

/** Which stroke is which. */
export const CurveKey = ({ strip, reference, past }: { strip: string; reference?: string | undefined; past?: string | undefined }) => (
  <p class="curve-key">
    {[['strip', strip], ['reference', reference], ['past', past]].map(([kind, says]) =>
      says ? (
        <span key={kind}>
          <svg class="curve-chart" viewBox="0 0 32 12" aria-hidden="true"><polyline class={kind} points="1,6 31,6" /></svg>
          {says}
        </span>
      ) : null,
    )}
  </p>
)
