import type { SeriesPoint } from '../../projections/series.ts'
import { useWords } from '../app-context.ts'
import { Backward, Forward } from '../parts/icons.tsx'
import { VerdictMark } from '../parts/verdict-mark.tsx'
import type { signalsAt } from './pictures.ts'

interface ReadoutProps {
  point: SeriesPoint
  unit: string
  /** What else there is to say of it, in one line. */
  more: readonly (string | undefined)[]
  onEarlier: (() => void) | undefined
  onLater: (() => void) | undefined
}

/** The reading under the thumb, at arm's length. As high for every reading: the chart below must not jump while it is gone through. */
export const Readout = ({ point, unit, more, onEarlier, onLater }: ReadoutProps) => {
  const words = useWords().trends
  return (
    <div class="chart-readout">
      <button type="button" class="icon-button" aria-label={words.earlier} disabled={!onEarlier} onClick={onEarlier}><Backward /></button>
      <div aria-live="polite">
        <p class="found"><strong>{point.keyed}</strong> <span class="quiet small">{unit}</span> <VerdictMark verdict={point.verdict} /></p>
        <p class="small quiet">{more.filter(Boolean).join(' · ')}</p>
      </div>
      <button type="button" class="icon-button" aria-label={words.later} disabled={!onLater} onClick={onLater}><Forward /></button>
    </div>
  )
}

/** What the rules say of the reading under the thumb. */
export const Signals = ({ signals }: { signals: ReturnType<typeof signalsAt> }) => {
  const words = useWords().trends
  const says = [
    ...signals.rules.map((rule) => words.rule(rule, words.rules[rule - 1]!)),
    ...(['range', 'average', 'sums'] as const).flatMap((kind) => (signals[kind] ? [words.signals[kind]] : [])),
  ]
  return says.length ? <ul class="signals" aria-live="polite">{says.map((it) => <li key={it}>{it}</li>)}</ul> : null
}
