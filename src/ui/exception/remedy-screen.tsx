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
import { knownOf, type Said } from './known.ts'
import { RefusedView } from './refused-view.tsx'
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
  const [said, setSaid] = useState<Said>({ lots: {} })
  const { state, ledger } = lab.value
  /** Whose amount somebody has seen: it may be in the bath by now, and can be logged whatever has changed since. */
  const [seen, setSeen] = useState<Remedy>()
  const remedy = answers(state, plan, exception.id, phone.clock.now(), knownOf(state, ledger, exception, said))
    .flatMap(({ remedies }) => remedies)
    .find(({ id }) => id === remedyId)
  const onLots = (lots: Said['lots']): void => setSaid({ ...said, lots })
  if (seen?.dose && !remedy?.dose) return <DoseFlow exception={exception} remedy={seen} dose={seen.dose} plan={plan} lots={said.lots} onLots={onLots} stopped={remedy?.refused ?? 'notOffered'} />
  if (!remedy) {
    return (
      <Screen title={checkOf(plan, exception.check).name} back next={<LinkButton kind="go" href={`/exception/${exception.id}`}>{words.round.verdict.toException}</LinkButton>}>
        <Banner title={words.exception.notOfferedNow} />
      </Screen>
    )
  }
  if (remedy.refused) return <RefusedView remedy={remedy} refused={remedy.refused} plan={plan} />
  if (remedy.dose) return <DoseFlow exception={exception} remedy={remedy} dose={remedy.dose} plan={plan} lots={said.lots} onLots={onLots} onSeen={setSeen} />
  return <SettingView exception={exception} remedy={remedy} plan={plan} said={said} onSaid={setSaid} />
}
