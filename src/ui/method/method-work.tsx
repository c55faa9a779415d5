import { useState } from 'preact/hooks'
import type { ReadingCheck } from '../../plan/check.ts'
import { cardsUnread } from '../../corrections/cards-unread.ts'
import { placeOf } from '../../plan/find.ts'
import type { LabPlan, Method } from '../../plan/lab-plan.ts'
import { cardsNeeded } from '../../safety/needed.ts'
import { cardOf } from '../../safety/own-cards.ts'
import { useApp, useWords } from '../app-context.ts'
import { CautionGate } from '../mixing/caution-gate.tsx'
import { askedOf } from '../round/asked.ts'
import { useAnswering } from '../round/answering.ts'
import { freshHalf } from '../round/half.ts'
import { VerdictScreen } from '../round/verdict-screen.tsx'
import { Screen } from '../screen.tsx'
import { useMethodDraft } from './draft.ts'
import { FiguresView } from './figures-view.tsx'
import { StepCard } from './step-card.tsx'

const recently = 2 * 3_600_000

/** A method worked for its check: cautions before their steps, steps with their timers, figures, and the reading that comes of them. */
export const MethodWork = ({ plan, check, method }: { plan: LabPlan; check: ReadingCheck; method: Method }) => {
  const { lab, phone, person, router } = useApp()
  const words = useWords()
  const [draft, keep] = useMethodDraft(check.id)
  const [half] = useState(() => freshHalf(phone.clock.now()))
  const asked = askedOf(lab.value.state, check, phone)
  const answering = useAnswering({ half, asked, round: undefined, onAnswered: () => keep(undefined), onUndone: () => undefined })
  const { station, machine } = placeOf(plan, check.station)
  const meta = `${machine.name} · ${station.name}`
  if (answering.saved)
    return <VerdictScreen check={check} saved={answering.saved} answering={answering} meta={meta} next={{ label: words.round.verdict.done, later: words.round.verdict.later, go: () => router.back() }} />
  if (!draft) return <Screen title={method.name} back meta={meta} />

  const step = method.steps[draft.step]
  const { ledger } = lab.value
  const now = phone.clock.now()
  const cautions = ledger.lines.slice(ledger.indexAt(now - recently)).filter((line) => line.kind === 'caution')
  const before = step ? [draft.step === 0 ? method.caution : undefined, step.caution].filter((it) => it !== undefined) : []
  // One card after the other: two at once breed blind confirming.
  const unread = before.flatMap((id) => {
    const card = cardOf(plan, id)
    return card ? cardsUnread(cardsNeeded([{ ...card, gated: true }]), { cautions, person: person.value, station: check.station, now }) : []
  })
  const unknown = before.find((id) => !cardOf(plan, id))
  if (unknown) return <Screen title={method.name} back meta={meta}><p class="flagged">{words.safety.noCard(unknown)}</p></Screen>
  if (unread.length) return <CautionGate key={unread[0]!.card} title={method.name} meta={meta} needs={unread.slice(0, 1)} station={check.station} />
  return step ? <StepCard method={method} meta={meta} draft={draft} onKeep={keep} /> : <FiguresView plan={plan} check={check} method={method} meta={meta} draft={draft} onKeep={keep} answering={answering} />
}
