import { useState } from 'preact/hooks'
import { checkOf } from '../../plan/find.ts'
import type { LabPlan } from '../../plan/lab-plan.ts'
import type { Machine } from '../../plan/machine.ts'
import { filmAtRisk } from '../../projections/film-at-risk.ts'
import { standingHolds, type HoldNow } from '../../projections/holds.ts'
import { answerableExceptions } from '../../projections/left-behind.ts'
import { useApp, useWords } from '../app-context.ts'
import { timeText } from '../format.ts'
import { Banner } from '../parts/banner.tsx'
import { Button } from '../parts/button.tsx'
import { Card } from '../parts/card.tsx'
import { Field } from '../parts/field.tsx'
import { HoldToConfirm } from '../parts/hold-to-confirm.tsx'
import { Sheet } from '../parts/sheet.tsx'
import { SavingProblem } from '../saving-problem.tsx'
import { useSaving } from '../saving.ts'
import { filmText } from '../units.ts'

/** Holding a machine: no production film on it until somebody releases it and says why. */
export const HoldCard = ({ machine, plan }: { machine: Machine; plan: LabPlan }) => {
  const { lab } = useApp()
  const words = useWords()
  const [asking, setAsking] = useState<'hold' | HoldNow>()
  const holds = standingHolds(lab.value.state.holds, machine.id)
  return (
    <>
      {holds.map((hold) => (
        <Card key={hold.id} title={words.now.held(timeText(hold.from, plan.timeZone))}>
          <p>{hold.reason}</p>
          {hold.filmAtRiskMetres ? <p class="small quiet">{words.now.atRisk}: {filmText(hold.filmAtRiskMetres, plan.units.length)}</p> : null}
          <Button wide onPress={() => setAsking(hold)}>{words.now.machine.release}</Button>
        </Card>
      ))}
      {holds.length ? null : <Button kind="stop" wide onPress={() => setAsking('hold')}>{words.now.machine.hold}</Button>}
      {asking === 'hold' ? <AskHold machine={machine} plan={plan} onDone={() => setAsking(undefined)} /> : null}
      {asking && asking !== 'hold' ? <AskRelease hold={asking} onDone={() => setAsking(undefined)} /> : null}
    </>
  )
}

export const AskHold = ({ machine, plan, exception, onDone }: { machine: Machine; plan: LabPlan; exception?: string; onDone(): void }) => {
  const { lab, now } = useApp()
  const words = useWords()
  const saving = useSaving()
  const { state } = lab.value
  const open = answerableExceptions(state, plan).filter((it) => it.machine === machine.id)
  const about = open.find((it) => it.id === exception) ?? open[0]
  const [reason, setReason] = useState(about ? words.now.machine.outReason(checkOf(plan, about.check).name) : '')
  const [tried, setTried] = useState(false)
  const risk = filmAtRisk(state, plan, machine, now.value)
  // To the centimetre, not the metre: the feet on the hold are the feet that were shown.
  const metres = Math.round(risk.metres * 100) / 100
  const save = async (): Promise<void> => {
    setTried(true)
    if (!reason.trim()) return
    const saved = await saving.save('hold', {
      machine: machine.id,
      reason: reason.trim(),
      ...(about ? { exception: about.id } : {}),
      filmAtRiskMetres: metres,
    })
    if (saved) onDone()
  }
  return (
    <Sheet title={words.now.machine.hold} closeName={words.shell.close} onClose={onDone}>
      <SavingProblem of={saving} />
      <Banner title={words.now.machine.leaderNote} />
      <p>{words.now.atRisk}: <strong>{filmText(metres, plan.units.length)}</strong> <span class="small quiet">{words.now.atRiskSince(timeText(risk.since, plan.timeZone))}</span></p>
      <Field name={words.now.machine.holdReason} value={reason} onChange={setReason} problem={tried && !reason.trim() ? words.now.machine.reasonMissing : undefined} />
      <HoldToConfirm done={saving.busy} hint={words.parts.hold} onConfirm={() => void save()}>{words.now.machine.holdSave}</HoldToConfirm>
    </Sheet>
  )
}

const AskRelease = ({ hold, onDone }: { hold: HoldNow; onDone(): void }) => {
  const words = useWords()
  const saving = useSaving()
  const [reason, setReason] = useState('')
  const [tried, setTried] = useState(false)
  const save = async (): Promise<void> => {
    setTried(true)
    if (reason.trim() && (await saving.save('release', { hold: hold.id, reason: reason.trim() }))) onDone()
  }
  return (
    <Sheet title={words.now.machine.release} closeName={words.shell.close} onClose={onDone}>
      <SavingProblem of={saving} />
      <p>{hold.reason}</p>
      <Field name={words.now.machine.releaseReason} value={reason} onChange={setReason} problem={tried && !reason.trim() ? words.now.machine.reasonMissing : undefined} />
      <HoldToConfirm done={saving.busy} hint={words.parts.hold} onConfirm={() => void save()}>{words.now.machine.releaseSave}</HoldToConfirm>
    </Sheet>
  )
}
