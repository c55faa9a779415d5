import { checkOf } from '../../plan/find.ts'
import type { CheckId } from '../../plan/ids.ts'
import type { LabPlan } from '../../plan/lab-plan.ts'
import type { Mark } from '../../projections/checks.ts'
import { pairFindings, type PairFinding } from '../../projections/pairs.ts'
import { useApp, useWords } from '../app-context.ts'
import { decimalsOf, numberText, timeText } from '../format.ts'
import { Banner } from '../parts/banner.tsx'
import { LinkButton } from '../parts/button.tsx'
import './pair-cards.css'

/** What pairs of readings say together, of those that touch these checks: both readings with their times, what it means, and what to do. */
export const PairCards = ({ plan, of }: { plan: LabPlan; of: readonly CheckId[] }) => {
  const { lab, now } = useApp()
  const found = pairFindings(lab.value.state, plan, now.value).filter((it) => of.includes(it.check) || of.includes(it.other))
  const toRead = found.filter(({ code }) => code === 'readTheOther')
  return (
    <>
      {found.filter((it) => !toRead.includes(it)).map((it) => <PairCard key={`${it.check} ${it.other}`} finding={it} plan={plan} />)}
      {toRead.length ? <ToRead others={[...new Set(toRead.map(({ other }) => other))]} plan={plan} /> : null}
    </>
  )
}

/** Others of a pair that nobody has read about the same time: one line each, since there is nothing to say yet. */
const ToRead = ({ others, plan }: { others: readonly CheckId[]; plan: LabPlan }) => {
  const say = useWords().pairs
  return (
    <Banner kind="warn" title={say.says.readTheOther}>
      {others.map((id) => <LinkButton key={id} wide href={`/check/${id}`}>{say.readNow(checkOf(plan, id).name)}</LinkButton>)}
    </Banner>
  )
}

const PairCard = ({ finding, plan }: { finding: PairFinding; plan: LabPlan }) => {
  const say = useWords().pairs
  const { code, check, other, mark, otherMark, difference, within } = finding
  const line = (id: CheckId, it: Mark | undefined): string => {
    const known = checkOf(plan, id)
    if (it?.value === undefined || known.kind !== 'reading') return say.notRead(known.name)
    const text = it.keyed ?? numberText(it.value, decimalsOf(known.step))
    return say.read(known.name, `${text} ${known.unit === '1' || known.unit === 'pH' ? '' : known.unit}`.trim(), timeText(it.time, plan.timeZone))
  }
  const decimals = Math.max(...[check, other].map((id) => checkOf(plan, id)).map((it) => (it.kind === 'reading' ? decimalsOf(it.step) : 0)))
  return (
    <Banner kind="warn" title={say.says[code]}>
      <ul class="small">
        <li>{line(check, mark)}</li>
        <li>{line(other, otherMark)}</li>
        {difference === undefined || within === undefined ? null : <li>{say.apartBy(numberText(Math.abs(difference), decimals), numberText(within, decimals))}</li>}
      </ul>
      <ol class="todo small">{say.todo[code].map((step) => <li key={step}>{step}</li>)}</ol>
      {code === 'apart' ? <LinkButton wide href={`/check/${other}`}>{say.readNow(checkOf(plan, other).name)}</LinkButton> : null}
    </Banner>
  )
}
