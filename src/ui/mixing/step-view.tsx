import type { ComponentChildren } from 'preact'
import { useState } from 'preact/hooks'
import { tick, type MixingSheet, type SheetStep } from '../../corrections/mixing-sheet.ts'
import type { Formula } from '../../plan/formula.ts'
import type { LabPlan } from '../../plan/lab-plan.ts'
import type { MixNow } from '../../projections/mixes.ts'
import { useApp, useWords } from '../app-context.ts'
import { buzz } from '../buzz.ts'
import { shownAmount } from '../exception/amount.ts'
import { Banner } from '../parts/banner.tsx'
import { Button } from '../parts/button.tsx'
import { Card } from '../parts/card.tsx'
import { Field } from '../parts/field.tsx'
import { SavingProblem } from '../saving-problem.tsx'
import { useSaving } from '../saving.ts'
import { Screen } from '../screen.tsx'
import { useWakeLock } from '../wake-lock.ts'
import { CautionGate } from './caution-gate.tsx'
import { DiscardBatch } from './discard-batch.tsx'
import { stepName } from './step-name.ts'

export interface BatchProps {
  mix: MixNow
  sheet: MixingSheet
  formula: Formula
  plan: LabPlan
  history: ComponentChildren
}

/** One thing to dissolve: its caution, then how much, then that it is in, with the temperature of the mix. */
export const StepView = ({ mix, sheet, formula, plan, history, step }: BatchProps & { step: SheetStep }) => {
  const { lab, phone, person } = useApp()
  const words = useWords()
  const say = words.mixing
  const saving = useSaving()
  const [celsius, setCelsius] = useState('')
  const [lot, setLot] = useState('')
  const [tried, setTried] = useState(false)
  useWakeLock(true)
  const { ledger } = lab.value
  const cautions = ledger.lines.slice(ledger.indexAt(mix.startedAt)).filter((line) => line.kind === 'caution')
  const asked = { cautions, person: person.value, now: phone.clock.now() }
  const revealed = step.amount.reveal(asked)
  const name = stepName(step, formula, plan, words)
  const meta = say.step(step.order + 1, sheet.steps.length)
  if (!revealed.ok) return <CautionGate title={name} meta={meta} needs={revealed.needs} station={mix.station} />
  const shown = shownAmount(revealed.amount, revealed.unit)
  const degrees = Number(celsius.replace(',', '.'))
  const badCelsius = celsius.trim() === '' || !(degrees >= -5 && degrees <= 100)
  const put = async (): Promise<void> => {
    setTried(true)
    if (badCelsius) {
      buzz('refused')
      return
    }
    const ticked = tick(sheet, step.order, { ...asked, now: phone.clock.now(), celsius: degrees, lot: lot.trim() || undefined })
    if (!ticked.ok) return
    const saved = await saving.save('mixStep', {
      mix: mix.id, order: step.order, substance: step.substance, amount: revealed.amount, unit: step.unit, celsius: degrees,
      ...(lot.trim() ? { lot: lot.trim() } : {}), ...(revealed.cautions.length ? { cautions: [...revealed.cautions] } : {}),
    })
    if (saved) buzz('saved')
  }
  return (
    <Screen title={mix.name} meta={meta} back next={<Button kind="go" notYet={saving.busy ? words.shell.loading : undefined} onPress={() => put()}>{say.itIsIn(name)}</Button>}>
      {step.order === 0 ? <Banner title={say.startWater(String(Number(sheet.startWaterLitres.toPrecision(4))), formula.startCelsius)} /> : null}
      <Card title={name}>
        <p class="amount"><strong>{shown.text}</strong> {shown.unit}</p>
        <p class="lead">{step.note}</p>
      </Card>
      <SavingProblem of={saving} />
      <Field name={say.celsius} unit="°C" kind="decimal" value={celsius} onChange={setCelsius} problem={tried && badCelsius ? say.badCelsius : undefined} />
      <Field name={words.exception.lotKeyed} value={lot} onChange={setLot} />
      {history}
      <DiscardBatch mix={mix} />
    </Screen>
  )
}
