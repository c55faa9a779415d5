import { useState } from 'preact/hooks'
import { answers } from '../../corrections/remedies.ts'
import type { Remedy } from '../../corrections/remedy.ts'
import { checkOf } from '../../plan/find.ts'
import type { LabPlan } from '../../plan/lab-plan.ts'
import type { Exception } from '../../projections/exceptions.ts'
import { useApp, useWords } from '../app-context.ts'
import { Banner } from '../parts/banner.tsx'
import { LinkButton } from '../parts/button.tsx'
import { Screen } from '../screen.tsx'
import { DoseFlow } from './dose-flow.tsx'
import { knownOf } from './known.ts'
import { refusalText, sayText } from './sentence.ts'
import { SettingView } from './setting-view.tsx'
import './exception.css'

interface RemedyScreenProps {
  exception: Exception
  plan: LabPlan
  remedyId: string
}

/** One remedy: refused with its reason, a dose behind its caution, or something set at the machine. */
export const RemedyScreen = ({ exception, plan, remedyId }: RemedyScreenProps) => {
  const { lab, phone } = useApp()
  const words = useWords()
  const [lots, setLots] = useState<Readonly<Record<string, string>>>({})
  const { state, ledger } = lab.value
  const remedy = answers(state, plan, exception.id, phone.clock.now(), knownOf(state, ledger, exception, lots))
    .flatMap(({ remedies }) => remedies)
    .find(({ id }) => id === remedyId)
  if (!remedy) {
    return (
      <Screen title={checkOf(plan, exception.check).name} back next={<LinkButton kind="go" href={`/exception/${exception.id}`}>{words.round.verdict.toException}</LinkButton>}>
        <Banner title={words.exception.notOfferedNow} />
      </Screen>
    )
  }
  if (remedy.refused) return <RefusedView remedy={remedy} refused={remedy.refused} plan={plan} />
  if (remedy.dose) return <DoseFlow exception={exception} remedy={remedy} dose={remedy.dose} plan={plan} lots={lots} onLots={setLots} />
  return <SettingView exception={exception} remedy={remedy} plan={plan} />
}

/** Not now: why, and what comes first, with the way to it. */
const RefusedView = ({ remedy, refused, plan }: { remedy: Remedy; refused: NonNullable<Remedy['refused']>; plan: LabPlan }) => {
  const { lab } = useApp()
  const words = useWords()
  const say = words.exception
  const { doFirst } = refused
  const check = typeof doFirst.facts['check'] === 'string' ? plan.checks.find(({ id }) => id === doFirst.facts['check']) : undefined
  const openException = check && lab.value.state.exceptions.open[check.id]
  return (
    <Screen
      title={sayText(remedy.says, plan, words)}
      back
      next={check ? <LinkButton kind="go" href={openException ? `/exception/${openException}` : `/check/${check.id}`}>{check.name}</LinkButton> : null}
    >
      <Banner kind="stop" title={say.refusedTitle}>
        <p class="lead">{refusalText(refused, plan, words)}</p>
      </Banner>
      <p class="lead"><strong>{sayText(doFirst, plan, words)}</strong></p>
      {refused.code === 'answerOutOfBounds' && typeof refused.facts['material'] === 'string' ? <LinkButton wide href={`/response/${remedy.station}/${refused.facts['material']}`}>{words.response.link}</LinkButton> : null}
      <p class="small quiet">{say.source(refused.source)}</p>
      <p class="small quiet">{words.safety.deferral}</p>
    </Screen>
  )
}
