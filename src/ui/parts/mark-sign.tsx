import './mark-sign.css'

/** The most pressing thing at a station. */
export type StationMark = 'act' | 'warn' | 'late' | 'due'

/** Above the highest roller. */
const y = 11

/** Square: out. Triangle: warning. Clock: due; filled, late. Told apart by shape alone, in ink or in one red. */
export const MarkSign = ({ kind, x }: { kind: StationMark; x: number }) => {
  if (kind === 'act')
    return (
      <g class="station-mark act">
        <rect x={x - 10} y={y - 10} width="20" height="20" rx="4" />
        <path d={`M${x} ${y - 5}v6 M${x} ${y + 5}v.1`} />
      </g>
    )
  if (kind === 'warn')
    return (
      <g class="station-mark warn">
        <path class="frame" d={`M${x} ${y - 9}l10.5 18h-21z`} />
        <path d={`M${x} ${y - 2.5}v5 M${x} ${y + 6}v.1`} />
      </g>
    )
  return (
    <g class={`station-mark ${kind}`}>
      <circle cx={x} cy={y} r="9.5" />
      <path d={`M${x} ${y - 5}v5l3.5 2.5`} />
    </g>
  )
}
