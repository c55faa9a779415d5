import { useState } from 'preact/hooks'
import { isDeveloper } from '../../corrections/bath-now.ts'
import { certify } from '../../corrections/certificate.ts'
import { readingsAt } from '../../corrections/lookup.ts'
import { placeOf } from '../../plan/find.ts'
import type { LineOf } from '../../projections/line.ts'
import { useApp, useWords } from '../app-context.ts'
import { buzz } from '../buzz.ts'
import { timeText } from '../format.ts'
import { Banner } from '../parts/banner.tsx'
import { Button, LinkButton } from '../parts/button.tsx'
import { Choices, Field } from '../parts/field.tsx'
import { SavingProblem } from '../saving-problem.tsx'
import { useSaving } from '../saving.ts'
import { Screen } from '../screen.tsx'
import { shortText } from '../units.ts'
import { useDates } from '../use-dates.ts'
import { DiscardBatch } from './discard-batch.tsx'
import type { BatchProps } from './step-view.tsx'

/** Everything is in: what must be measured, written on the tank and, for a developer, proven by a strip, before it may be connected. */
export const CertifyView = ({ mix, sheet, formula, plan, history }: BatchProps) => {
  const { lab, phone, person } = useApp()
  const words = useWords()
  const { date } = useDates(plan.timeZone)
  const say = words.mixing
  const saving = useSaving()
  const [pH, setPh] = useState('')
  const [gravity, setGravity] = useState('')
  const [label, setLabel] = useState(() => say.labelDraft(mix.name, date(mix.startedAt)))
  const [strip, setStrip] = useState<string>()
  const [reasons, setReasons] = useState<readonly string[]>([])
  const { machine, station } = placeOf(plan, formula.for)
  const needsStrip = isDeveloper(station)
  const stripCheck = plan.checks.find((it) => it.kind === 'strip' && placeOf(plan, it.station).machine.id === machine.id)
  const { ledger } = lab.value
  const strips = ledger.lines.slice(ledger.indexAt(mix.startedAt)).filter((line): line is LineOf<'strip'> => line.kind === 'strip' && !line.withdrawnBy && line.data.check === stripCheck?.id)
  const aims = {
    pH: formula.limits?.pH ?? readingsAt(plan, formula.for, 'pH')[0]?.limits,
    gravity: formula.limits?.specificGravity ?? readingsAt(plan, formula.for, 'specificGravity')[0]?.limits,
  }
  const aimText = (limits: typeof aims.pH, decimals: number): string | undefined => (limits ? words.round.check.aim(shortText(limits.aim, decimals)) : undefined)
  const certifyIt = async (): Promise<void> => {
    const numbers = { pH: Number(pH.replace(',', '.')), specificGravity: Number(gravity.replace(',', '.')) }
    const missing = [...(pH.trim() && numbers.pH > 0 && numbers.pH < 14 ? [] : [say.badPh]), ...(gravity.trim() && numbers.specificGravity > 0.9 && numbers.specificGravity < 1.5 ? [] : [say.badGravity])]
    if (missing.length) return setReasons(missing)
    const proof = strips.find(({ id }) => id === strip)
    const answer = certify(plan, sheet, {
      at: phone.clock.now(), by: person.value, ...numbers, label, limits: formula.limits, strip: proof ? { id: proof.id, verdict: proof.data.verdict } : undefined,
    })
    if (!answer.ok) {
      buzz('refused')
      return setReasons(answer.reasons.map(({ code, facts }) => say.why[code]?.(facts) ?? code))
    }
    setReasons([])
    if (await saving.save('mixCertificate', { mix: mix.id, ...numbers, label: label.trim(), ...(proof ? { strip: proof.id } : {}) })) buzz('saved')
  }
  return (
    <Screen title={mix.name} meta={say.certify} back next={<Button kind="go" notYet={saving.busy ? words.shell.loading : undefined} onPress={() => certifyIt()}>{say.certifySave}</Button>}>
      <p>{say.certifyMore}</p>
      {reasons.length ? <Banner kind="stop" title={say.notYet}><ul>{reasons.map((it) => <li key={it}>{it}</li>)}</ul></Banner> : null}
      <SavingProblem of={saving} />
      <Field name="pH" kind="decimal" hint={aimText(aims.pH, 2)} value={pH} onChange={setPh} />
      <Field name={say.gravity} kind="decimal" hint={aimText(aims.gravity, 3)} value={gravity} onChange={setGravity} />
      <Field name={say.label} hint={say.labelHint} value={label} onChange={setLabel} />
      {needsStrip ? (
        strips.length ? (
          <>
            <h2>{say.strip}</h2>
            <Choices<string> name={say.strip} of={strips.map(({ id, time, data }) => ({ value: id as string, says: `${timeText(time, plan.timeZone)} · ${data.verdict}` }))} value={strip} onChange={setStrip} />
          </>
        ) : (
          <Banner kind="warn" title={say.stripNeeded}>{stripCheck ? <LinkButton wide href={`/check/${stripCheck.id}`}>{stripCheck.name}</LinkButton> : null}</Banner>
        )
      ) : null}
      {history}
      <DiscardBatch mix={mix} />
    </Screen>
  )
}
