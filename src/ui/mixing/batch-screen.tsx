import { mayConnect } from '../../corrections/certificate.ts'
import { nextStep } from '../../corrections/mixing-sheet.ts'
import { sheetOf } from '../../corrections/sheet-of.ts'
import { placeOf } from '../../plan/find.ts'
import type { MixNow } from '../../projections/mixes.ts'
import { useApp, useWords } from '../app-context.ts'
import { timeText } from '../format.ts'
import { Banner } from '../parts/banner.tsx'
import { Card, Row, Rows } from '../parts/card.tsx'
import { Screen } from '../screen.tsx'
import { shortText } from '../units.ts'
import { CertifyView } from './certify-view.tsx'
import { ConnectView } from './connect-view.tsx'
import { DiscardBatch } from './discard-batch.tsx'
import { StepView } from './step-view.tsx'
import { stepName } from './step-name.ts'
import '../exception/exception.css'

/** One batch at the one thing that it waits for: the next step, its certificate, its connection. */
export const BatchScreen = ({ mix }: { mix: MixNow }) => {
  const { lab, plan: inForce } = useApp()
  const words = useWords()
  const say = words.mixing
  // The plan under which it was begun: a revision does not change what is half mixed.
  const plan = lab.value.state.plans.revisions.find(({ id }) => id === mix.plan)?.plan ?? inForce.value!.plan
  const formula = plan.formulas?.find(({ id }) => id === mix.formula)
  const made = formula && sheetOf(mix, formula, (inForce.value?.plan ?? plan).cautions)
  if (!formula || !made?.ok) {
    return (
      <Screen title={mix.name} back>
        <Banner kind="stop" title={made && !made.ok ? (say.why[made.why.code]?.(made.why.facts) ?? made.why.code) : say.noFormula} />
        <DiscardBatch mix={mix} />
      </Screen>
    )
  }
  const { sheet } = made
  const step = nextStep(sheet)
  const history = (
    <Card title={say.sheet}>
      <Rows>
        <Row what={say.startWater(shortText(sheet.startWaterLitres, 1), formula.startCelsius)} />
        {sheet.steps.map((it) => {
          const done = mix.ticks.find(({ order }) => order === it.order)
          return (
            <Row
              key={it.order}
              what={it === step ? <strong>{stepName(it, formula, plan, words)}</strong> : stepName(it, formula, plan, words)}
              under={it.note}
              value={done ? `${timeText(done.at, plan.timeZone)}${done.celsius === undefined ? '' : ` · ${shortText(done.celsius, 1)} °C`}` : it === step ? say.now : ''}
            />
          )
        })}
        <Row what={say.toMark(shortText(sheet.toLitres, 1))} />
      </Rows>
    </Card>
  )
  if (mix.ended) {
    return (
      <Screen title={mix.name} meta={placeOf(plan, formula.for).station.name} back>
        <Banner title={`${say.ended[mix.ended.how]} ${timeText(mix.ended.at, plan.timeZone)}`}>{mix.ended.why ?? null}</Banner>
        {history}
      </Screen>
    )
  }
  const shared = { mix, sheet, formula, plan, history }
  if (step) return <StepView key={step.order} {...shared} step={step} />
  return mayConnect(sheet) ? <ConnectView {...shared} /> : <CertifyView {...shared} />
}
