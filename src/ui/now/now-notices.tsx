import type { LabPlan } from '../../plan/lab-plan.ts'
import { useApp, useWords } from '../app-context.ts'
import { Banner } from '../parts/banner.tsx'
import { Button } from '../parts/button.tsx'
import { SendingProblem } from '../sending-problem.tsx'
import { LeftBehindCard } from './left-behind-card.tsx'

/** What is said above the machines when there is something to say. */
export const NowNotices = ({ plan }: { plan: LabPlan }) => (
  <>
    <SendingProblem lastingOnly />
    <Unsent />
    <Update />
    <LeftBehindCard plan={plan} />
  </>
)

/** What has waited too long on this phone, said loudly here; on the other screens it is framed in the head. */
const Unsent = () => {
  const { sending, now, phone } = useApp()
  const words = useWords()
  const { waiting, oldestAt, concern } = sending.value
  if (concern === 'none' || oldestAt === undefined) return null
  const span = words.time.span(now.value - oldestAt)
  const { unsent } = words.shell
  return (
    <Banner kind={concern === 'alarm' ? 'stop' : 'warn'} title={concern === 'alarm' ? unsent.alarm(waiting, span) : unsent.warning(waiting, span)}>
      <p>{concern === 'alarm' ? unsent.alarmMore : unsent.warningMore}</p>
      <Button wide onPress={() => phone.sendNow()}>{unsent.send}</Button>
    </Banner>
  )
}

/** A new version is offered here alone, and never while a round is open. */
const Update = () => {
  const { update, rounds } = useApp()
  const words = useWords().shell.update
  const waiting = update.value
  if (!waiting || rounds.round.value) return null
  return (
    <Banner title={words.title}>
      <p>{words.more}</p>
      <Button wide onPress={() => waiting.apply()}>{words.now}</Button>
    </Banner>
  )
}
