import type { CautionCard } from '../../safety/card.ts'
import { cards } from '../../safety/cards.ts'
import { cardOf, ownCards } from '../../safety/own-cards.ts'
import { useApp, useWords } from '../app-context.ts'
import { CautionCardView } from '../exception/caution-card.tsx'
import { Card, Row, Rows } from '../parts/card.tsx'
import { Screen } from '../screen.tsx'
import { Deferral } from './deferral.tsx'
import '../exception/exception.css'

const kinds: readonly CautionCard['kind'][] = ['mixture', 'chemical', 'gas', 'operation']

/** Every caution card, to read when nothing presses; one of them at `/safety/<id>`. */
export const SafetyScreen = () => {
  const { router, plan } = useApp()
  const words = useWords().safety
  const [id] = router.here.value.rest
  const ofLab = { cautions: plan.value?.plan.cautions }
  const card = id ? cardOf(ofLab, id) : undefined
  const own = ownCards(ofLab)
  if (card)
    return (
      <Screen title={words.say(card.name)} back>
        {card.use ? <p class="quiet">{words.say(card.use)}</p> : null}
        <CautionCardView card={card} />
        <Deferral underCard />
      </Screen>
    )
  return (
    <Screen title={words.title} back>
      <Deferral />
      {own.length ? <Card title={words.ownTitle}><Rows>{own.map((it) => <Row key={it.id} what={it.name} href={`/safety/${it.id}`} />)}</Rows></Card> : null}
      {kinds.map((kind) => (
        <Card key={kind} title={words.kinds[kind]}>
          <Rows>{cards.filter((it) => it.kind === kind).map((it) => <Row key={it.id} what={words.say(it.name)} under={words.say(it.use)} href={`/safety/${it.id}`} />)}</Rows>
        </Card>
      ))}
    </Screen>
  )
}
