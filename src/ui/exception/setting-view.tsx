import { useState } from 'preact/hooks'
import { isFixing } from '../../corrections/bath-now.ts'
import type { Remedy, Setting } from '../../corrections/remedy.ts'
import type { LabPlan } from '../../plan/lab-plan.ts'
import { personOf, placeOf } from '../../plan/find.ts'
import type { Exception } from '../../projections/exceptions.ts'
import { spanAt } from '../../projections/machines.ts'
import type { PersonId } from '../../plan/ids.ts'
import { cardOf } from '../../safety/own-cards.ts'
import { runOffKind } from '../../safety/run-offs.ts'
import { useApp, useWords } from '../app-context.ts'
import { buzz } from '../buzz.ts'
import { AskHold } from '../now/hold-card.tsx'
import { Button } from '../parts/button.tsx'
import { Card, Row, Rows } from '../parts/card.tsx'
import { Deferral } from '../safety/deferral.tsx'
import { SavingProblem } from '../saving-problem.tsx'
import { useSaving } from '../saving.ts'
import { Screen } from '../screen.tsx'
import { shortText } from '../units.ts'
import { RunOffSheet } from '../waste/run-off-sheet.tsx'
import { CautionCardView } from './caution-card.tsx'
import { CloseSheet } from './close-sheet.tsx'
import type { Said } from './known.ts'
import { SecondPersonSheet } from './second-person-sheet.tsx'
import { sayText } from './sentence.ts'
import { IceSheet, SupplySheet } from './water-sheet.tsx'
import { WorkingSheet } from './working-sheet.tsx'

interface SettingViewProps {
  exception: Exception
  remedy: Remedy
  plan: LabPlan
  said: Said
  onSaid(said: Said): void
}

type Open = 'hold' | 'close' | 'supervisor' | 'runOff' | 'ice' | 'supply' | Setting

/** Something set at the machine, or done by hand: from what to what, how, and that it was done. */
export const SettingView = ({ exception, remedy, plan, said, onSaid }: SettingViewProps) => {
  const { router, person, lab, phone } = useApp()
  const words = useWords()
  const say = words.exception
  const saving = useSaving()
  const [open, setOpen] = useState<Open>()
  const { machine, station } = placeOf(plan, exception.station)
  const text = sayText(remedy.says, plan, words)
  const leave = (): void => router.go(`/exception/${exception.id}`, 'replace')
  const bleed = remedy.settings?.find(({ quantity }) => quantity === 'bleed')
  const isReplaced = remedy.code === 'replaceBath'
  /** What leaves the bath is not done before it is said where it went; of a bath that is replaced that is all of it. */
  const ranOffLitres = bleed?.to ?? (isReplaced ? station.bath?.litres : undefined)
  const runOff = ranOffLitres === undefined ? undefined : runOffKind(isFixing(station) ? 'usedFixing' : station.kind === 'stop' ? 'stop' : 'developer')
  const cards = remedy.how.flatMap(({ facts }) => cardOf(plan, typeof facts['card'] === 'string' ? facts['card'] : '') ?? [])

  /** The machine's new speed belongs into the log as such: film at risk and every time along the path follow from it. */
  const logSpeed = async (): Promise<boolean> => {
    const speed = remedy.code === 'speed' ? remedy.settings?.find(({ quantity, unit }) => quantity === 'speed' && unit === 'm/min') : undefined
    const { state } = spanAt(lab.value.state.machines[machine.id], phone.clock.now())
    if (!speed || state !== 'running') return true
    return (await saving.save('run', { machine: machine.id, state, metresPerMinute: Number(speed.to.toFixed(4)) })) !== undefined
  }
  const done = async (approvedBy?: PersonId): Promise<void> => {
    const numbers = (remedy.settings ?? []).map((it) => `${words.corrections.quantities[it.quantity] ?? it.quantity} ${shortText(it.to, 2)} ${it.unit}`)
    const saved = await saving.save('note', {
      text: [say.doneNote(text), ...numbers, ...(approvedBy ? [say.approvedBy(personOf(plan, approvedBy)?.name ?? approvedBy)] : [])].join('. '),
      about: 'maintenance',
      machine: machine.id,
      station: remedy.station,
      exception: exception.id,
    })
    if (!saved || !(await logSpeed())) return
    buzz('saved')
    if (runOff) setOpen('runOff')
    else leave()
  }
  const isSupervisor = person.value !== null && personOf(plan, person.value)?.role === 'supervisor'
  const act = (): void => {
    if (remedy.code === 'hold') setOpen('hold')
    else if (isReplaced && !runOff) setOpen('close')
    else if (remedy.approval === 'supervisor' && !isSupervisor) setOpen('supervisor')
    else if (runOff) setOpen('runOff')
    else void done()
  }
  const label = remedy.code === 'hold' ? words.now.machine.hold : runOff ? say.logItRanOff : isReplaced ? say.close : say.doneButton
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
          {remedy.code === 'speed' ? <p class="small quiet">{say.speedSet}</p> : null}
        </Card>
      ) : null}
      {remedy.lacks ? <p class="flagged">{sayText(remedy.lacks, plan, words)}</p> : null}
      {remedy.code === 'cooling' ? <Button wide onPress={() => setOpen('ice')}>{say.ice}</Button> : null}
      {remedy.code === 'blend' ? <Button wide onPress={() => setOpen('supply')}>{say.supply}</Button> : null}
      {remedy.how.length ? <ol class="how">{remedy.how.map((it) => <li key={it.code}>{sayText(it, plan, words)}</li>)}</ol> : null}
      {remedy.approval ? <p class="flagged">{say.needsSupervisor}</p> : null}
      {cards.map((card) => (
        <section key={card.id} class="caution" aria-label={words.safety.say(card.name)}>
          <CautionCardView card={card} />
        </section>
      ))}
      <p class="small quiet">{say.source(remedy.source)}</p>
      {cards.length ? <Deferral underCard /> : null}
      {open === 'hold' ? <AskHold machine={machine} plan={plan} exception={exception.id} onDone={leave} /> : null}
      {open === 'close' ? <CloseSheet exception={exception} {...(isReplaced ? { for: 'bathReplaced' } : {})} onDone={leave} /> : null}
      {open === 'supervisor' ? <SecondPersonSheet plan={plan} supervisorOnly onPerson={(by) => { setOpen(undefined); void done(by) }} onClose={() => setOpen(undefined)} /> : null}
      {open === 'runOff' && runOff && ranOffLitres ? <RunOffSheet kind={runOff} station={remedy.station} exception={exception.id} litres={ranOffLitres} onDone={isReplaced ? () => setOpen('close') : leave} onClose={() => setOpen(undefined)} /> : null}
      {open === 'ice' ? <IceSheet onJacket={(jacket) => onSaid({ ...said, jacket })} onClose={() => setOpen(undefined)} /> : null}
      {open === 'supply' ? <SupplySheet onSupply={(supply) => onSaid({ ...said, supply })} onClose={() => setOpen(undefined)} /> : null}
      {typeof open === 'object' && open.working ? <WorkingSheet working={open.working} onClose={() => setOpen(undefined)} /> : null}
    </Screen>
  )
}
