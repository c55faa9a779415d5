import { useState } from 'preact/hooks'
import type { Remedy, Setting } from '../../corrections/remedy.ts'
import type { LabPlan } from '../../plan/lab-plan.ts'
import { personOf, placeOf } from '../../plan/find.ts'
import type { Exception } from '../../projections/exceptions.ts'
import type { PersonId } from '../../plan/ids.ts'
import { useApp, useWords } from '../app-context.ts'
import { buzz } from '../buzz.ts'
import { AskHold } from '../now/hold-card.tsx'
import { Button } from '../parts/button.tsx'
import { Card, Row, Rows } from '../parts/card.tsx'
import { SavingProblem } from '../saving-problem.tsx'
import { useSaving } from '../saving.ts'
import { Screen } from '../screen.tsx'
import { shortText } from '../units.ts'
import { CloseSheet } from './close-sheet.tsx'
import { SecondPersonSheet } from './second-person-sheet.tsx'
import { sayText } from './sentence.ts'
import { WorkingSheet } from './working-sheet.tsx'

/** Something set at the machine, or done by hand: from what to what, how, and that it was done. */
export const SettingView = ({ exception, remedy, plan }: { exception: Exception; remedy: Remedy; plan: LabPlan }) => {
  const { router, person } = useApp()
  const words = useWords()
  const say = words.exception
  const saving = useSaving()
  const [open, setOpen] = useState<'hold' | 'close' | 'supervisor' | Setting>()
  const { machine } = placeOf(plan, exception.station)
  const text = sayText(remedy.says, plan, words)
  const done = async (approvedBy?: PersonId): Promise<void> => {
    const numbers = (remedy.settings ?? []).map((it) => `${words.corrections.quantities[it.quantity] ?? it.quantity} ${shortText(it.to, 2)} ${it.unit}`)
    const saved = await saving.save('note', {
      text: [say.doneNote(text), ...numbers, ...(approvedBy ? [say.approvedBy(personOf(plan, approvedBy)?.name ?? approvedBy)] : [])].join('. '),
      about: 'maintenance',
      machine: machine.id,
      station: remedy.station,
      exception: exception.id,
    })
    if (!saved) return
    buzz('saved')
    router.go(`/exception/${exception.id}`, 'replace')
  }
  const isSupervisor = person.value !== null && personOf(plan, person.value)?.role === 'supervisor'
  const act = (): void => {
    if (remedy.code === 'hold') setOpen('hold')
    else if (remedy.code === 'replaceBath') setOpen('close')
    else if (remedy.approval === 'supervisor' && !isSupervisor) setOpen('supervisor')
    else void done()
  }
  const label = remedy.code === 'hold' ? words.now.machine.hold : remedy.code === 'replaceBath' ? say.close : say.doneButton
  return (
    <Screen title={text} back next={<Button kind="go" onPress={act}>{label}</Button>}>
      <SavingProblem of={saving} />
      {remedy.settings?.length ? (
        <Card title={say.setTo}>
          <Rows>
            {remedy.settings.map((it) => (
              <Row
                key={`${it.quantity} ${it.at ?? ''}`}
                what={`${words.corrections.quantities[it.quantity] ?? it.quantity}${it.at ? ` · ${placeOf(plan, it.at).station.name}` : ''}`}
                value={<strong class="set-to">{it.from === undefined ? '' : `${shortText(it.from, 2)} → `}{shortText(it.to, 2)} {it.unit}</strong>}
                {...(it.working ? { onPress: () => setOpen(it), under: say.showWorking } : {})}
              />
            ))}
          </Rows>
        </Card>
      ) : null}
      {remedy.lacks ? <p class="flagged">{sayText(remedy.lacks, plan, words)}</p> : null}
      {remedy.how.length ? <ol class="how">{remedy.how.map((it) => <li key={it.code}>{sayText(it, plan, words)}</li>)}</ol> : null}
      {remedy.approval ? <p class="flagged">{say.needsSupervisor}</p> : null}
      <p class="small quiet">{say.source(remedy.source)}</p>
      {open === 'hold' ? <AskHold machine={machine} plan={plan} exception={exception.id} onDone={() => router.go(`/exception/${exception.id}`, 'replace')} /> : null}
      {open === 'close' ? <CloseSheet exception={exception} onDone={() => router.go(`/exception/${exception.id}`, 'replace')} /> : null}
      {open === 'supervisor' ? <SecondPersonSheet plan={plan} supervisorOnly onPerson={(by) => { setOpen(undefined); void done(by) }} onClose={() => setOpen(undefined)} /> : null}
      {typeof open === 'object' && open.working ? <WorkingSheet working={open.working} onClose={() => setOpen(undefined)} /> : null}
    </Screen>
  )
}
