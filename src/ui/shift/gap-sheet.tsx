import { useState } from 'preact/hooks'
import { checkOf, machineOf } from '../../plan/find.ts'
import type { CheckId } from '../../plan/ids.ts'
import type { LabPlan } from '../../plan/lab-plan.ts'
import type { ShiftPage } from '../../projections/shift-page.ts'
import type { Skip } from '../../record/kinds/skip.ts'
import { skipReasons, type SkipReason } from '../../rounds/skip-reasons.ts'
import { useWords } from '../app-context.ts'
import { timeText } from '../format.ts'
import { Button } from '../parts/button.tsx'
import { Choices, Field } from '../parts/field.tsx'
import { Sheet } from '../parts/sheet.tsx'
import { SavingProblem } from '../saving-problem.tsx'
import { useSaving } from '../saving.ts'
import { checkName } from './line-text.ts'

export interface Gap {
  check: string
  due: number
  /** For what the reason is meant at first. */
  scope?: 'one' | 'machine'
}

/** Why something was missed, said afterwards: for one check, or for a whole round of a machine that nobody walked. */
export const GapSheet = ({ plan, page, gap, onDone }: { plan: LabPlan; page: ShiftPage; gap: Gap; onDone(): void }) => {
  const all = useWords()
  const words = all.shift.gap
  const { skip } = all.round
  const saving = useSaving()
  const [reason, setReason] = useState<SkipReason>()
  const [remark, setRemark] = useState('')
  const [scope, setScope] = useState<'one' | 'machine'>(gap.scope ?? 'one')
  const [tried, setTried] = useState(false)
  const check = checkOf(plan, gap.check as CheckId)
  const own = page.coverage.occurrences.find((it) => it.check === gap.check && it.dueAt === gap.due)
  const ofMachine = own ? page.coverage.occurrences.filter((it) => it.status === 'missed' && it.machine === own.machine) : []
  const chosen: Gap[] = scope === 'machine' ? ofMachine.map((it) => ({ check: it.check, due: it.dueAt })) : [gap]
  const isMissing = reason === 'other' && !remark.trim()
  const save = async (): Promise<void> => {
    setTried(true)
    if (!reason || isMissing) return
    for (const it of chosen) {
      const data: Skip = { check: it.check as CheckId, due: it.due, reason, ...(remark.trim() ? { remark: remark.trim() } : {}) }
      if (!(await saving.save('skip', data))) return
    }
    onDone()
  }
  return (
    <Sheet title={words.title} closeName={all.shell.close} onClose={onDone}>
      <SavingProblem of={saving} />
      {scope === 'one' ? <p>{timeText(gap.due, plan.timeZone)} · {checkName(plan, gap.check)}</p> : null}
      {/* What it did then is not asked: any reason may have been true. */}
      <Choices<SkipReason> name={skip.title} of={skipReasons(plan, check, 'stopped').map((value) => ({ value, says: skip.reasons[value] }))} value={reason} onChange={setReason} />
      <Field name={skip.remark} value={remark} onChange={setRemark} problem={tried && isMissing ? skip.remarkMissing : undefined} />
      {own && ofMachine.length > 1 ? (
        <Choices<'one' | 'machine'>
          name={words.scope}
          of={[{ value: 'machine', says: words.machine(ofMachine.length, machineOf(plan, own.machine).name) }, { value: 'one', says: words.thisOne(`${timeText(gap.due, plan.timeZone)} ${check.name}`) }]}
          value={scope}
          onChange={setScope}
        />
      ) : null}
      <p class="small quiet">{skip.honest}</p>
      <Button kind="go" notYet={saving.busy ? all.shell.loading : reason ? undefined : skip.title} onPress={() => save()}>{words.save(chosen.length)}</Button>
    </Sheet>
  )
}
