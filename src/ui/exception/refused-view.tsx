import type { Remedy } from '../../corrections/remedy.ts'
import type { LabPlan } from '../../plan/lab-plan.ts'
import { useApp, useWords } from '../app-context.ts'
import { Banner } from '../parts/banner.tsx'
import { LinkButton } from '../parts/button.tsx'
import { Deferral } from '../safety/deferral.tsx'
import { Screen } from '../screen.tsx'
import { refusalText, sayText } from './sentence.ts'

/** Not now: why, and what comes first, with the way to it. */
export const RefusedView = ({ remedy, refused, plan }: { remedy: Remedy; refused: NonNullable<Remedy['refused']>; plan: LabPlan }) => {
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
      <Deferral />
    </Screen>
  )
}
