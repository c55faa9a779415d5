import type { PlannedDose, Remedy } from '../../corrections/remedy.ts'
import type { LabPlan } from '../../plan/lab-plan.ts'
import type { MaterialId } from '../../plan/ids.ts'
import type { Exception } from '../../projections/exceptions.ts'
import { neededLines, type CardNeeded } from '../../safety/needed.ts'
import { cardOf } from '../../safety/own-cards.ts'
import { useApp, useWords } from '../app-context.ts'
import { HoldToConfirm } from '../parts/hold-to-confirm.tsx'
import { Deferral } from '../safety/deferral.tsx'
import { SavingProblem } from '../saving-problem.tsx'
import { useHeldLines } from '../safety/held-lines.ts'
import { Screen } from '../screen.tsx'
import { CautionCardView } from './caution-card.tsx'
import { sayText } from './sentence.ts'

interface CautionStepProps {
  exception: Exception
  remedy: Remedy
  dose: PlannedDose
  needs: readonly CardNeeded[]
  plan: LabPlan
}

/** What must be read before an amount is seen. The deadliest lines of this very dose are held; each card is kept as an entry. */
export const CautionStep = ({ exception, remedy, dose, needs, plan }: CautionStepProps) => {
  const { person } = useApp()
  const words = useWords()
  const { isHeld, hold, saving } = useHeldLines({ material: dose.material as MaterialId, station: remedy.station, exception: exception.id })
  const cards = needs.flatMap((needed) => {
    const card = cardOf(plan, needed.card)
    return card ? [{ needed, card }] : []
  })
  return (
    <Screen title={sayText(remedy.says, plan, words)} back meta={words.safety.before}>
      {person.value === null ? <p class="flagged">{words.safety.locked}</p> : null}
      {cards.map(({ needed, card }) => (
        <section key={needed.card} class="caution" aria-label={words.safety.say(card.name)}>
          <CautionCardView card={card} />
          {neededLines(needed, card).map((line) => (
            <HoldToConfirm key={line.key} done={isHeld(needed, line.key)} hint={words.parts.hold} onConfirm={() => void hold(needed, line.key)}>
              {words.safety.say(line.says)}
            </HoldToConfirm>
          ))}
        </section>
      ))}
      <SavingProblem of={saving} />
      <p class="small">{words.safety.amountAfter}</p>
      <Deferral underCard />
    </Screen>
  )
}
