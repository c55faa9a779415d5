import type { CautionCard } from '../../safety/card.ts'
import { confirmationStandsMilliseconds, neededLines, type CardNeeded } from '../../safety/needed.ts'
import { cardOf } from '../../safety/own-cards.ts'
import type { Ledger } from '../../projections/ledger.ts'
import type { PersonId } from '../../plan/ids.ts'
import { useApp, useWords } from '../app-context.ts'
import { CautionCardView } from '../exception/caution-card.tsx'
import { HoldToConfirm } from '../parts/hold-to-confirm.tsx'
import { Deferral } from '../safety/deferral.tsx'
import { SavingProblem } from '../saving-problem.tsx'
import { useHeldLines } from '../safety/held-lines.ts'

/** Those that this person has not confirmed within the hour. */
export const notYetRead = (needed: readonly CardNeeded[], { ledger, person, now }: { ledger: Ledger; person: PersonId | null; now: number }): CardNeeded[] => {
  const read = ledger.lines.slice(ledger.indexAt(now - confirmationStandsMilliseconds)).filter((line) => line.kind === 'caution' && !line.withdrawnBy && line.person === person)
  return needed.filter(({ card, version, lines }) => !read.some((line) => line.kind === 'caution' && line.data.card === card && line.data.version === version && lines.every((key) => line.data.lines.includes(key))))
}

/** Read before the bench says how much of something hazardous: kept as an entry, as at the tank. */
export const CautionsFirst = ({ cards, needed }: { cards: readonly CautionCard[]; needed: readonly CardNeeded[] }) => {
  const { person, plan } = useApp()
  const words = useWords()
  const { isHeld, hold, saving } = useHeldLines({})
  return (
    <>
      <h2>{words.safety.before}</h2>
      {person.value === null ? <p class="flagged">{words.safety.locked}</p> : null}
      {cards.map((it) => cardOf(plan.value!.plan, it.id) ?? it).map((card) => <section key={card.id} class="caution" aria-label={words.safety.say(card.name)}><CautionCardView card={card} /></section>)}
      {needed.map((it) => {
        const card = cardOf(plan.value!.plan, it.card)
        return card
          ? neededLines(it, card).map((line) => (
              <HoldToConfirm key={`${it.card}/${line.key}`} done={isHeld(it, line.key)} hint={words.parts.hold} onConfirm={() => void hold(it, line.key)}>{words.safety.say(line.says)}</HoldToConfirm>
            ))
          : null
      })}
      <SavingProblem of={saving} />
      <p class="small">{words.safety.amountAfter}</p>
      <Deferral underCard />
    </>
  )
}
