import { useState } from 'preact/hooks'
import { ownDose } from '../../corrections/own-dose.ts'
import type { Remedy } from '../../corrections/remedy.ts'
import { placeOf } from '../../plan/find.ts'
import type { MaterialId } from '../../plan/ids.ts'
import type { LabPlan } from '../../plan/lab-plan.ts'
import type { Exception } from '../../projections/exceptions.ts'
import { useApp, useWords } from '../app-context.ts'
import { Button } from '../parts/button.tsx'
import { Choices, Field } from '../parts/field.tsx'
import { Screen } from '../screen.tsx'
import { DoseFlow } from './dose-flow.tsx'
import { knownOf } from './known.ts'
import { RefusedView } from './refused-view.tsx'

interface Asked {
  material: MaterialId | 'water'
  amount: number
  unit: 'mL' | 'g' | 'L'
  why: string
}

/** The person decides: another material or amount than the table offers, through the same interlocks and cautions, with the reason kept. `/exception/<reading>/own` */
export const OwnDoseScreen = ({ exception, plan }: { exception: Exception; plan: LabPlan }) => {
  const { lab, phone } = useApp()
  const [asked, setAsked] = useState<Asked>()
  const [lots, setLots] = useState<Readonly<Record<string, string>>>({})
  const [seen, setSeen] = useState<Remedy>()
  if (!asked) return <Ask exception={exception} plan={plan} onAsked={setAsked} />
  const { state, ledger } = lab.value
  const { material, amount, unit, why } = asked
  const remedy = ownDose(state, plan, { exception: exception.id, station: exception.station, material, amount, unit }, phone.clock.now(), knownOf(state, ledger, exception, { lots }))
  if (seen?.dose && !remedy?.dose) return <DoseFlow exception={exception} remedy={seen} dose={seen.dose} plan={plan} lots={lots} onLots={setLots} reason={why} stopped={remedy?.refused ?? 'notOffered'} />
  if (!remedy?.dose || remedy.refused) return remedy?.refused ? <RefusedView remedy={remedy} refused={remedy.refused} plan={plan} /> : null
  return <DoseFlow exception={exception} remedy={remedy} dose={remedy.dose} plan={plan} lots={lots} onLots={setLots} reason={why} onSeen={setSeen} />
}

const Ask = ({ exception, plan, onAsked }: { exception: Exception; plan: LabPlan; onAsked(asked: Asked): void }) => {
  const words = useWords()
  const say = words.exception
  const [material, setMaterial] = useState<string>()
  const [amount, setAmount] = useState('')
  const [why, setWhy] = useState('')
  const [tried, setTried] = useState(false)
  const materials = plan.materials.filter((it) => it.for.includes(exception.station))
  const chosen = materials.find(({ id }) => id === material)
  const unit = material === 'water' ? 'L' : (chosen?.unit ?? 'mL')
  const number = Number(amount.replace(',', '.'))
  const problem = !material ? say.ownMaterialMissing : !(number > 0 && number <= 1_000_000) ? say.ownAmountMissing : !why.trim() ? words.now.machine.reasonMissing : undefined
  const goOn = (): void => {
    setTried(true)
    if (!problem) onAsked({ material: material as MaterialId | 'water', amount: number, unit, why: why.trim() })
  }
  return (
    <Screen title={say.own} back meta={placeOf(plan, exception.station).station.name} next={<Button kind="go" onPress={goOn}>{say.ownGoOn}</Button>}>
      <p>{say.ownMore}</p>
      {tried && problem ? <p class="problem" role="alert">{problem}</p> : null}
      <h2>{say.ownMaterial}</h2>
      <Choices<string> name={say.ownMaterial} of={[...materials.map(({ id, name }) => ({ value: id as string, says: name })), { value: 'water', says: words.shift.adds.water }]} value={material} onChange={setMaterial} />
      <Field name={say.ownAmount} unit={material ? unit : undefined} kind="decimal" value={amount} onChange={setAmount} />
      <Field name={say.ownWhy} value={why} onChange={setWhy} />
    </Screen>
  )
}
