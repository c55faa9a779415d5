import { useState } from 'preact/hooks'
import type { Answered } from '../../corrections/remedies.ts'
import type { Remedy } from '../../corrections/remedy.ts'
import type { LabPlan } from '../../plan/lab-plan.ts'
import type { Exception } from '../../projections/exceptions.ts'
import { useWords } from '../app-context.ts'
import { Empty } from '../parts/banner.tsx'
import { Card, Row, Rows } from '../parts/card.tsx'
import { Choices } from '../parts/field.tsx'
import { refusalText, sayText } from './sentence.ts'

/** Where to look first, then what to do, in the trade's order. Where several faults fit, the person says which it is. */
export const Remedies = ({ exception, found, plan }: { exception: Exception; found: readonly Answered[]; plan: LabPlan }) => {
  const words = useWords()
  const say = words.exception
  const [fault, setFault] = useState<string>()
  const chosen = found.find((it) => it.fault === fault) ?? found[0]
  if (!chosen) return <Empty title={say.noRemedy}>{say.noRemedyMore}</Empty>
  return (
    <>
      {found.length > 1 ? (
        <Card title={say.whichFault}>
          <Choices name={say.whichFault} of={found.map((it) => ({ value: it.fault, says: words.corrections.faults[it.fault] ?? it.fault }))} value={chosen.fault} onChange={setFault} />
        </Card>
      ) : null}
      {chosen.lookFirst.length ? (
        <Card title={say.lookFirst}>
          <ul class="look-first">{chosen.lookFirst.map((code) => <li key={code}>{words.corrections.look[code] ?? code}</li>)}</ul>
        </Card>
      ) : null}
      <Card title={say.then} beside={words.corrections.faults[chosen.fault]}>
        <Rows>{chosen.remedies.map((remedy) => <RemedyRow key={remedy.id} remedy={remedy} exception={exception} plan={plan} />)}</Rows>
        <p class="small quiet">{say.source(chosen.source)}</p>
      </Card>
    </>
  )
}

const RemedyRow = ({ remedy, exception, plan }: { remedy: Remedy; exception: Exception; plan: LabPlan }) => {
  const words = useWords()
  const say = words.exception
  const href = `/exception/${exception.id}/${encodeURIComponent(remedy.id)}`
  const text = sayText(remedy.says, plan, words)
  if (remedy.refused) return <Row href={href} what={<strong>{text}</strong>} under={refusalText(remedy.refused, plan, words)} value={<span class="refused">{say.refused}</span>} />
  if (remedy.done) return <Row what={<span class="quiet">{text}</span>} value={say.done} />
  if (remedy.dose) return <Row href={href} what={<strong>{text}</strong>} under={remedy.dose.needsCaution.length ? say.cautionFirst : undefined} />
  if (remedy.code === 'look' && !remedy.how.length) return <Row what={text} />
  return <Row href={href} what={text} />
}
