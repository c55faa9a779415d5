import { useState } from 'preact/hooks'
import type { Poured } from '../../corrections/add-entry.ts'
import { isOverPoured, jugReads } from '../../projections/over-poured.ts'
import { parseKeyed, type KeyedProblem } from '../../rounds/keyed.ts'
import { useWords } from '../app-context.ts'
import { Banner } from '../parts/banner.tsx'
import { Button } from '../parts/button.tsx'
import { Field } from '../parts/field.tsx'
import { NumberPad } from '../parts/number-pad.tsx'
import { Sheet } from '../parts/sheet.tsx'
import type { ShownAmount } from './amount.ts'

/** A jug holds no more than this in the shown unit. */
const most = 10_000

/** Another amount than was worked out: what was truly poured, and why. */
export const PouredSheet = ({ shown, onPoured, onClose }: { shown: ShownAmount; onPoured(poured: Poured, why: string): void; onClose(): void }) => {
  const words = useWords()
  const say = words.exception
  const [keyed, setKeyed] = useState('')
  const [why, setWhy] = useState('')
  const [problem, setProblem] = useState<KeyedProblem>()
  const [tried, setTried] = useState(false)
  const poured = { amount: Number(keyed), unit: shown.unit, keyed }
  const isMore = isOverPoured({ planned: shown, poured })
  const needsWhy = Math.abs(poured.amount - shown.amount) > jugReads * shown.amount
  const save = (): void => {
    setTried(true)
    const parsed = parseKeyed(keyed, { decimals: 3, low: 0, high: most })
    if (parsed.ok && needsWhy && !why.trim()) return
    if (parsed.ok) onPoured({ amount: parsed.value, unit: shown.unit, keyed: parsed.keyed }, why.trim())
    else setProblem(parsed.problem)
  }
  return (
    <Sheet title={say.pouredOther} closeName={words.shell.close} onClose={onClose}>
      <p class="amount"><strong>{keyed || '–'}</strong> {shown.unit}</p>
      {problem ? <p class="problem" role="alert">{words.round.problems[problem.code](problem as never)}</p> : null}
      <NumberPad value={keyed} onChange={(value) => { setKeyed(value); setProblem(undefined) }} onEnter={save} decimals={3} names={words.pad} />
      {isMore ? <Banner kind="warn" title={say.pouredMore} /> : null}
      <Field name={say.pouredWhy} hint={say.pouredWhyHint} value={why} onChange={setWhy} problem={tried && needsWhy && !why.trim() ? words.now.machine.reasonMissing : undefined} />
      <Button kind="go" onPress={save}>{words.round.check.savePlain}</Button>
    </Sheet>
  )
}
