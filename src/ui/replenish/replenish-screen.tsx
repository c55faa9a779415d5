import { useState } from 'preact/hooks'
import type { LabPlan } from '../../plan/lab-plan.ts'
import { driftsNow, type DriftNow } from '../../projections/drift.ts'
import { useApp, useWords } from '../app-context.ts'
import { Empty } from '../parts/banner.tsx'
import { Card } from '../parts/card.tsx'
import { Field } from '../parts/field.tsx'
import { Screen } from '../screen.tsx'
import { numberOf } from '../method/parse.ts'
import { Segments } from '../trends/segments.tsx'
import { lengthIn, metresOf } from '../units.ts'
import { DriftCard } from './drift-card.tsx'
import '../trends/trends.css'
import './replenish.css'

/** How much more than the usual footage each kind takes out. Common practice, no source. */
const densityOf = { thin: 0.75, usual: 1, dense: 1.25 } as const
type Footage = keyof typeof densityOf

/** Hours that a coming run is taken to last, until somebody says otherwise. */
const usualHours = 8

/** Where the baths go over the coming film, at which rate they would stand. */
export const ReplenishScreen = () => {
  const { plan } = useApp()
  const words = useWords()
  const inForce = plan.value?.plan
  if (!inForce) return <Screen title={words.replenish.title} back><Empty title={words.now.noPlan.title}>{words.now.noPlan.more}</Empty></Screen>
  return <Known plan={inForce} />
}

const Known = ({ plan }: { plan: LabPlan }) => {
  const { lab, phone } = useApp()
  const words = useWords().replenish
  const drifts = driftsNow(lab.value.state, plan, phone.clock.now())
  const byMachine = Map.groupBy(drifts, ({ machine }) => machine.id)
  return (
    <Screen title={words.title} back>
      {drifts.length === 0 ? <Empty title={words.none.title}>{words.none.more}</Empty> : null}
      {[...byMachine].map(([id, list]) => <OfMachine key={id} plan={plan} drifts={list} />)}
    </Screen>
  )
}

const OfMachine = ({ plan, drifts }: { plan: LabPlan; drifts: readonly DriftNow[] }) => {
  const words = useWords().replenish
  const { machine, metresPerMinute, millilitresPerMetre } = drifts[0]!
  const { length } = plan.units
  const [run, setRun] = useState(String(Math.round(lengthIn(metresPerMinute * 60 * usualHours, length) / 100) * 100))
  const [footage, setFootage] = useState<Footage>('usual')
  const [rate, setRate] = useState(millilitresPerMetre === undefined ? '' : String(Number(millilitresPerMetre.toFixed(2))))
  const [metres, perMetre] = [numberOf(run), numberOf(rate)]
  return (
    <>
      <Card title={machine.name}>
        <div class="two">
          <Field name={words.metres} unit={length} kind="decimal" value={run} onChange={setRun} />
          <Field name={words.rate} unit="mL/m" kind="decimal" value={rate} onChange={setRate} />
        </div>
        <p class="small quiet">
          {millilitresPerMetre === undefined ? words.noRate : words.rateNow(`${millilitresPerMetre.toFixed(2)} mL/m`)}
          {perMetre === undefined ? '' : ` · ${words.perMinute(`${((perMetre * metresPerMinute) / 1000).toFixed(2)} L/min`)}`}
        </p>
        <Segments name={words.footage} of={(['thin', 'usual', 'dense'] as const).map((value) => ({ value, says: words.densities[value] }))} value={footage} onChange={(it) => setFootage(it)} />
        <p class="small quiet">{words.footageMore}</p>
      </Card>
      {metres !== undefined && metres > 0 && perMetre !== undefined && perMetre >= 0
        ? drifts.map((drift) => (
            <DriftCard key={drift.check.id} drift={drift} metres={metresOf(metres, length)} millilitresPerMetre={perMetre} density={densityOf[footage]} length={length} onTry={(it) => setRate(String(Number(it.toFixed(2))))} />
          ))
        : null}
      <p class="small quiet">{drifts.length > 1 ? `${words.differ} ` : ''}{words.domain}</p>
    </>
  )
}
