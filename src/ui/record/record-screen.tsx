import { useApp, useWords } from '../app-context.ts'
import { Empty } from '../parts/banner.tsx'
import { Screen } from '../screen.tsx'
import { BringCard } from './bring-card.tsx'
import { SpanCard } from './span-card.tsx'
import './record.css'

/** The record of any time as files, and an export brought back. */
export const RecordScreen = () => {
  const { plan } = useApp()
  const words = useWords()
  const inForce = plan.value?.plan
  return (
    <Screen title={words.record.title} back>
      {inForce ? (
        <div class="record-cards">
          <SpanCard plan={inForce} />
          <BringCard />
        </div>
      ) : (
        <Empty title={words.now.noPlan.title}>{words.now.noPlan.more}</Empty>
      )}
    </Screen>
  )
}
