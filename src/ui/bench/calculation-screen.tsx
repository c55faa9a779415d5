import { useEffect, useRef, useState } from 'preact/hooks'
import { cautionsBefore } from '../../safety/bench-amounts.ts'
import type { AnyCalculation } from '../../science/calculation.ts'
import { evaluate } from '../../science/evaluate.ts'
import { Refusal } from '../../science/refusal.ts'
import { useApp, useWords } from '../app-context.ts'
import { Banner } from '../parts/banner.tsx'
import { Button } from '../parts/button.tsx'
import { Card } from '../parts/card.tsx'
import { Working } from '../parts/working.tsx'
import { Screen } from '../screen.tsx'
import { CautionsFirst, notYetRead } from './cautions-first.tsx'
import { edgeUnits } from './edge-units.ts'
import { FormFields } from './form-fields.tsx'
import { blank, filledGroup, readForm, type Problems } from './form.ts'
import { ResultView } from './result-view.tsx'
import '../exception/exception.css'

type Outcome = { problems: Problems } | { refusal: Refusal } | ReturnType<typeof evaluate>

/** One calculation: its form, then result and working on the same screen. */
export const CalculationScreen = ({ calculation }: { calculation: AnyCalculation }) => {
  const { plan, lab, person, phone } = useApp()
  const words = useWords().bench
  const edge = edgeUnits(plan.value?.plan.units)
  const [keyed, setKeyed] = useState(() => blank(calculation.inputs, edge))
  const [outcome, setOutcome] = useState<Outcome>()
  const [before, setBefore] = useState(() => cautionsBefore(calculation.id, {}))
  const answer = useRef<HTMLDivElement>(null)
  // The answer stands above the form, and the button under the thumb: it comes into view by itself.
  useEffect(() => {
    if (outcome) answer.current?.scrollIntoView({ block: 'start' })
  }, [outcome])
  const workOut = (): void => {
    const { inputs, problems } = readForm(calculation.inputs, keyed, edge)
    if (Object.keys(problems).length) {
      setOutcome({ problems })
      return
    }
    try {
      setBefore(cautionsBefore(calculation.id, inputs))
      setOutcome(evaluate(calculation, inputs))
    } catch (thrown) {
      if (!(thrown instanceof Refusal)) throw thrown
      setOutcome({ refusal: thrown })
    }
  }
  const unread = outcome && 'result' in outcome ? notYetRead(before.needed, { ledger: lab.value.ledger, person: person.value, now: phone.clock.now() }) : []
  const refusal = outcome && 'refusal' in outcome ? outcome.refusal : undefined
  const problems = outcome && 'problems' in outcome ? outcome.problems : {}
  return (
    <Screen title={calculation.title} back next={<Button kind="go" onPress={workOut}>{words.workOut}</Button>}>
      <div class="stack answer" ref={answer} role="status">
        {unread.length && outcome && 'result' in outcome ? <CautionsFirst cards={before.cards} needed={unread} /> : null}
        {outcome && 'result' in outcome && !unread.length ? (
          <>
            <Card title={words.result}>
              <ResultView fields={calculation.outputs} result={outcome.result} edge={edge} />
            </Card>
            <Card title={words.working}>
              <Working steps={outcome.steps} name={words.working} />
            </Card>
          </>
        ) : null}
        {refusal ? <Banner kind="stop" title={words.refusal(refusal)} /> : null}
        {Object.keys(problems).length ? <Banner kind="stop" title={words.lookOver} /> : null}
      </div>
      <Card>
        <FormFields
          fields={calculation.inputs}
          values={keyed}
          path=""
          onChange={(values) => {
            setKeyed(values)
            // A result stands only for what is in the form.
            setOutcome(undefined)
          }}
          edge={edge}
          problems={problems}
          refused={refusal ? { path: refusal.field, says: words.refusal(refusal) } : undefined}
        />
        <div class="spread">
          <Button kind="plain" onPress={() => { setKeyed(filledGroup(calculation.inputs, calculation.example.inputs, edge)); setOutcome(undefined) }}>{words.example}</Button>
          <Button kind="plain" onPress={() => { setKeyed(blank(calculation.inputs, edge)); setOutcome(undefined) }}>{words.clear}</Button>
        </div>
      </Card>
      <Card title={words.formula}>
        <p class="formula">{calculation.formula}</p>
        <p><strong>{words.source}.</strong> {calculation.source}</p>
        <p><strong>{words.domain}.</strong> {calculation.domain}</p>
      </Card>
    </Screen>
  )
}
