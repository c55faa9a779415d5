import { useApp, useWords } from '../app-context.ts'
import { Empty } from '../parts/banner.tsx'
import { Screen } from '../screen.tsx'
import { MachineCard } from './machine-card.tsx'

/** The laboratory as it stands: each machine, what is out, what is due, and the one thing to do next. */
export const Now = () => {
  const { plan } = useApp()
  const words = useWords()
  if (!plan.value) {
    return (
      <Screen title={words.now.title}>
        <Empty title={words.now.noPlan.title}>{words.now.noPlan.more}</Empty>
      </Screen>
    )
  }
  const inForce = plan.value.plan
  return (
    <Screen title={words.now.title}>
      {inForce.machines.map((machine) => <MachineCard key={machine.id} machine={machine} plan={inForce} />)}
    </Screen>
  )
}
