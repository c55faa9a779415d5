import { useState } from 'preact/hooks'
import type { Formula } from '../../plan/formula.ts'
import type { LabPlan } from '../../plan/lab-plan.ts'
import { placeOf } from '../../plan/find.ts'
import type { Station } from '../../plan/machine.ts'
import { openMixes, type MixNow } from '../../projections/mixes.ts'
import { notCovered } from '../../projections/stock.ts'
import { useApp, useWords } from '../app-context.ts'
import { Banner, Empty } from '../parts/banner.tsx'
import { Button } from '../parts/button.tsx'
import { Card, Row, Rows } from '../parts/card.tsx'
import { Field } from '../parts/field.tsx'
import { SavingProblem } from '../saving-problem.tsx'
import { useSaving } from '../saving.ts'
import { Screen } from '../screen.tsx'
import { useStocks } from '../stock/use-stocks.ts'
import { shortText } from '../units.ts'
import { useDates } from '../use-dates.ts'
import { BatchScreen } from './batch-screen.tsx'

/** Mixing sheets: `/mixing` shows the batches and the formulas of the plan, `/mixing/begin/<formula>` begins one, `/mixing/<batch>` goes on with it. */
export const MixingScreen = () => {
  const { plan, lab, router } = useApp()
  const words = useWords()
  const inForce = plan.value?.plan
  const [first, second] = router.here.value.rest
  if (!inForce) return <Screen title={words.mixing.title} back><Empty title={words.now.noPlan.title} /></Screen>
  const formula = first === 'begin' ? inForce.formulas?.find(({ id }) => id === second) : undefined
  if (formula) return <Begin plan={inForce} formula={formula} />
  const mix = first ? lab.value.state.mixes[first as MixNow['id']] : undefined
  return mix ? <BatchScreen mix={mix} /> : <Sheets plan={inForce} />
}

const Sheets = ({ plan }: { plan: LabPlan }) => {
  const { lab } = useApp()
  const words = useWords()
  const { when } = useDates(plan.timeZone)
  const say = words.mixing
  const open = openMixes(lab.value.state.mixes)
  const ended = Object.values(lab.value.state.mixes).filter((it) => it.ended).sort((a, b) => b.startedAt - a.startedAt).slice(0, 6)
  const row = (it: MixNow) => (
    <Row
      key={it.id}
      href={`/mixing/${it.id}`}
      what={<strong>{it.name}</strong>}
      under={`${shortText(it.litres, 1)} L · ${when(it.startedAt)}`}
      value={it.ended ? say.ended[it.ended.how] : it.certificate ? say.certified : say.inHand}
    />
  )
  return (
    <Screen title={say.title} back>
      {open.length ? <Card title={say.open}><Rows>{open.map(row)}</Rows></Card> : null}
      <Card title={say.formulas}>
        {plan.formulas?.length ? (
          <Rows>
            {plan.formulas.map((it) => <Row key={it.id} href={`/mixing/begin/${it.id}`} what={it.name} under={`${placeOf(plan, it.for).station.name} · ${placeOf(plan, it.for).machine.name}`} />)}
          </Rows>
        ) : (
          <Empty title={say.noFormulas}>{say.noFormulasMore}</Empty>
        )}
      </Card>
      {ended.length ? <Card title={say.before}><Rows>{ended.map(row)}</Rows></Card> : null}
    </Screen>
  )
}

/** Where chemicals are mixed: the machine's own place for it, else the laboratory's, else at the bath. */
const mixingPlace = (plan: LabPlan, formula: Formula): Station => {
  const { machine, station } = placeOf(plan, formula.for)
  const places = [machine, ...plan.machines].flatMap(({ stations }) => stations)
  return places.find(({ kind }) => kind === 'mixing') ?? station
}

const Begin = ({ plan, formula }: { plan: LabPlan; formula: Formula }) => {
  const { plan: inForce, router } = useApp()
  const words = useWords()
  const say = words.mixing
  const saving = useSaving()
  const [litres, setLitres] = useState(String(formula.litres))
  const [tried, setTried] = useState(false)
  const number = Number(litres.replace(',', '.'))
  const bad = !(number > 0 && number <= 100_000)
  const stocks = useStocks()
  const lacking = bad ? [] : notCovered(formula, number, plan, stocks)
  const begin = async (): Promise<void> => {
    setTried(true)
    if (bad) return
    const id = await saving.save('mix', { plan: inForce.value!.id, formula: formula.id, litres: number, station: mixingPlace(plan, formula).id })
    if (id) router.go(`/mixing/${id}`, 'replace')
  }
  return (
    <Screen title={formula.name} meta={placeOf(plan, formula.for).station.name} back next={<Button kind="go" notYet={saving.busy ? words.shell.loading : undefined} onPress={() => begin()}>{say.begin}</Button>}>
      <SavingProblem of={saving} />
      {lacking.length ? <Banner kind="warn" title={words.stock.shortOf(lacking.map(({ name }) => name).join(', '))} /> : null}
      <Field name={say.litres} unit="L" kind="decimal" value={litres} onChange={setLitres} problem={tried && bad ? say.badLitres : undefined} />
      <p class="small quiet">{say.setBy(formula.setBy)}</p>
      <p>{say.beforeBegin}</p>
    </Screen>
  )
}
