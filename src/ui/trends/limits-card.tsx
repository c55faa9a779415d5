import type { Limits } from '../../plan/limits.ts'
import { useWords } from '../app-context.ts'
import { numberText } from '../format.ts'
import { Button } from '../parts/button.tsx'
import { Card } from '../parts/card.tsx'
import type { Analysis } from './pictures.ts'
import { Segments } from './segments.tsx'

interface LimitsCardProps {
  isLevel: boolean
  limits: Limits
  unit: string
  decimals: number
  analysis: Analysis | undefined
  choice: 'plan' | 'computed'
  /** How many readings are looked at, of how many. */
  analysed: number
  total: number
  baselineFrom: string
  onChoice(choice: 'plan' | 'computed'): void
  onBaseline: (() => void) | undefined
}

/** What the readings are held against: the plan, or themselves. */
export const LimitsCard = ({ isLevel, limits, unit, decimals, analysis, choice, analysed, total, baselineFrom, onChoice, onBaseline }: LimitsCardProps) => {
  const words = useWords().trends.limits
  const text = (value: number | undefined, more = 0): string => (value === undefined ? words.open : `${numberText(value, decimals + more)}`)
  const range = (low: number | undefined, high: number | undefined, more = 0): string => `${text(low, more)} … ${text(high, more)} ${unit}`
  return (
    <Card title={words.title}>
      {isLevel ? <Segments name={words.choice} of={[{ value: 'plan', says: words.plan }, { value: 'computed', says: words.computed, isOpen: analysis !== undefined }]} value={choice} onChange={onChoice} /> : null}
      <dl class="pairs">
        {choice === 'plan' || !analysis ? (
          <>
            <dt>{words.aim}</dt><dd>{text(limits.aim)} {unit}</dd>
            <dt>{words.warning}</dt><dd>{range(limits.warningLow, limits.warningHigh)}</dd>
            <dt>{words.action}</dt><dd>{range(limits.actionLow, limits.actionHigh)}</dd>
          </>
        ) : (
          <>
            <dt>{words.centre}</dt><dd>{text(analysis.charted.centre, 1)} {unit}</dd>
            <dt>{words.computedLimits}</dt><dd>{range(analysis.charted.lower, analysis.charted.upper, 1)}</dd>
          </>
        )}
        {analysis ? <><dt>{words.sigma}</dt><dd>{text(analysis.charted.sigma, 2)} {unit}</dd></> : null}
      </dl>
      {analysis ? <p class="small quiet">{words.baseline(analysis.charted.baseline.count, baselineFrom)}{analysed < total ? ` ${words.newest(analysed)}` : ''}</p> : isLevel ? <p class="quiet">{words.tooFew}</p> : null}
      {onBaseline ? <Button onPress={onBaseline}>{words.setBaseline}</Button> : null}
    </Card>
  )
}
