import type { StationId } from '../../plan/ids.ts'
import { neededLines, type CardNeeded } from '../../safety/needed.ts'
import { cardOf } from '../../safety/own-cards.ts'
import { useApp, useWords } from '../app-context.ts'
import { CautionCardView } from '../exception/caution-card.tsx'
import { HoldToConfirm } from '../parts/hold-to-confirm.tsx'
import { Deferral } from '../safety/deferral.tsx'
import { SavingProblem } from '../saving-problem.tsx'
import { useHeldLines } from '../safety/held-lines.ts'
import { Screen } from '../screen.tsx'

/** What must be read before the amount for a batch is seen; each card is kept as an entry once its lines were held. */
export const CautionGate = ({ title, meta, needs, station }: { title: string; meta: string; needs: readonly CardNeeded[]; station: StationId }) => {
  const { person, plan } = useApp()
  const words = useWords()
  const { isHeld, hold, saving } = useHeldLines({ station })
  return (
    <Screen title={title} back meta={`${meta} · ${words.safety.before}`}>
      {person.value === null ? <p class="flagged">{words.safety.locked}</p> : null}
      {needs.map((needed) => {
        const card = cardOf(plan.value!.plan, needed.card)
        return card ? (
          <section key={needed.card} class="caution" aria-label={words.safety.say(card.name)}>
            <CautionCardView card={card} />
            {neededLines(needed, card).map((line) => (
              <HoldToConfirm key={line.key} done={isHeld(needed, line.key)} hint={words.parts.hold} onConfirm={() => void hold(needed, line.key)}>
                {words.safety.say(line.says)}
              </HoldToConfirm>
            ))}
          </section>
        ) : null
      })}
      <SavingProblem of={saving} />
      <p class="small">{words.safety.amountAfter}</p>
      <Deferral underCard />
    </Screen>
  )
}
