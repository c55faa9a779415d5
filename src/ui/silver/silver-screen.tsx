import { useApp, useWords } from '../app-context.ts'
import { Empty } from '../parts/banner.tsx'
import { Screen } from '../screen.tsx'
import { CellCards } from './cell-cards.tsx'
import { WashCard } from './wash-card.tsx'
import '../trends/trends.css'

/** The silver cell and the washes: what they do, worked out of what was read. */
export const SilverScreen = () => {
  const { plan } = useApp()
  const words = useWords()
  const inForce = plan.value?.plan
  return (
    <Screen title={words.silver.title} back>
      {inForce ? (
        <>
          <CellCards plan={inForce} />
          <WashCard plan={inForce} />
        </>
      ) : (
        <Empty title={words.now.noPlan.title}>{words.now.noPlan.more}</Empty>
      )}
    </Screen>
  )
}
