import { useState } from 'preact/hooks'
import { checkOf, placeOf } from '../../plan/find.ts'
import type { LabPlan } from '../../plan/lab-plan.ts'
import type { Exception } from '../../projections/exceptions.ts'
import { useWords } from '../app-context.ts'
import { Banner } from '../parts/banner.tsx'
import { Button } from '../parts/button.tsx'
import { Screen } from '../screen.tsx'
import { CloseSheet } from './close-sheet.tsx'
import { History } from './history.tsx'
import './exception.css'

/** An exception of something that a revision took out of the plan: what happened, and the way to close it. */
export const LeftBehindView = ({ exception, plan }: { exception: Exception; plan: LabPlan }) => {
  const words = useWords()
  const [isClosing, setClosing] = useState(false)
  const check = checkOf(plan, exception.check)
  const { machine, station } = placeOf(plan, exception.station)
  const isOpen = exception.state !== 'closed'
  return (
    <Screen title={check.name} back meta={`${machine.name} · ${station.name}`} next={isOpen ? <Button kind="go" onPress={() => setClosing(true)}>{words.exception.close}</Button> : null}>
      {isOpen ? <Banner kind="warn" title={words.now.leftBehind.title}>{words.now.leftBehind.exception}</Banner> : null}
      <History exception={exception} check={check} plan={plan} />
      {isClosing ? <CloseSheet exception={exception} onDone={() => setClosing(false)} /> : null}
    </Screen>
  )
}
