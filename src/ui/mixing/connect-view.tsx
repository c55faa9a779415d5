import { useState } from 'preact/hooks'
import { placeOf } from '../../plan/find.ts'
import { useApp, useWords } from '../app-context.ts'
import { timeText } from '../format.ts'
import { Card, Row, Rows } from '../parts/card.tsx'
import { Choices } from '../parts/field.tsx'
import { HoldToConfirm } from '../parts/hold-to-confirm.tsx'
import { SavingProblem } from '../saving-problem.tsx'
import { useSaving } from '../saving.ts'
import { Screen } from '../screen.tsx'
import { shortText } from '../units.ts'
import { DiscardBatch } from './discard-batch.tsx'
import type { BatchProps } from './step-view.tsx'

type As = 'replenisher' | 'bath'

/** Certified: what was found, and the one thing that is left. */
export const ConnectView = ({ mix, formula, plan, history }: BatchProps) => {
  const { router } = useApp()
  const words = useWords()
  const say = words.mixing
  const saving = useSaving()
  const [as, setAs] = useState<As>('replenisher')
  const { station } = placeOf(plan, formula.for)
  const certificate = mix.certificate!
  const connect = async (): Promise<void> => {
    const saved = await saving.save('mixEnd', { mix: mix.id, how: 'connected', ...(as === 'bath' ? { newBath: station.id } : {}) })
    if (saved) router.go('/mixing', 'replace')
  }
  return (
    <Screen title={mix.name} meta={say.certified} back>
      <Card title={certificate.label} beside={timeText(certificate.at, plan.timeZone)}>
        <Rows>
          <Row what="pH" value={shortText(certificate.pH, 2)} />
          <Row what={say.gravity} value={shortText(certificate.specificGravity, 4)} />
          {certificate.strip ? <Row what={say.strip} value={say.inLimits} /> : null}
        </Rows>
      </Card>
      <Choices<As> name={say.connectAs} of={[{ value: 'replenisher', says: say.asReplenisher(station.name) }, { value: 'bath', says: say.asBath(station.name) }]} value={as} onChange={setAs} />
      <SavingProblem of={saving} />
      <HoldToConfirm done={saving.busy} hint={words.parts.hold} onConfirm={() => void connect()}>{say.connect}</HoldToConfirm>
      {history}
      <DiscardBatch mix={mix} />
    </Screen>
  )
}
