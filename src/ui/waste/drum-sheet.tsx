import { useState } from 'preact/hooks'
import type { LabPlan } from '../../plan/lab-plan.ts'
import { useApp, useWords } from '../app-context.ts'
import { Row, Rows } from '../parts/card.tsx'
import { Field } from '../parts/field.tsx'
import { HoldToConfirm } from '../parts/hold-to-confirm.tsx'
import { Sheet } from '../parts/sheet.tsx'
import { SavingProblem } from '../saving-problem.tsx'
import { useSaving } from '../saving.ts'
import { shortText } from '../units.ts'
import { useDates } from '../use-dates.ts'

/** What is in a drum since it was last empty, and its handing over with the number of the paper that goes with it. */
export const DrumSheet = ({ plan, drum, onClose }: { plan: LabPlan; drum: string; onClose(): void }) => {
  const { lab } = useApp()
  const words = useWords()
  const { date } = useDates(plan.timeZone)
  const say = words.waste
  const saving = useSaving()
  const [to, setTo] = useState('')
  const [tried, setTried] = useState(false)
  const it = lab.value.state.drums[drum]
  const stations = plan.machines.flatMap((machine) => machine.stations)
  const place = stations.find(({ kind }) => kind === 'effluent' || kind === 'stores') ?? stations[0]!
  const handOver = async (): Promise<void> => {
    setTried(true)
    if (to.trim() && (await saving.save('drumOut', { drum, station: place.id, to: to.trim() }))) onClose()
  }
  return (
    <Sheet title={say.drums[drum] ?? drum} closeName={words.shell.close} onClose={onClose}>
      {it ? <p>{say.since(date(it.since))}</p> : null}
      <Rows>{Object.entries(it?.litres ?? {}).map(([waste, litres]) => <Row key={waste} what={say.kinds[waste] ?? waste} value={`${shortText(litres, 2)} L`} />)}</Rows>
      <SavingProblem of={saving} />
      <Field name={say.handTo} hint={say.handToHint} value={to} onChange={setTo} problem={tried && !to.trim() ? say.handToHint : undefined} />
      <HoldToConfirm done={saving.busy} hint={words.parts.hold} onConfirm={() => void handOver()}>{say.handOver}</HoldToConfirm>
    </Sheet>
  )
}
