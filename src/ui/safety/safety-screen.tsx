import { cardById, cards } from '../../safety/cards.ts'
import type { CautionCard } from '../../safety/card.ts'
import { useApp, useWords } from '../app-context.ts'
import { CautionCardView } from '../exception/caution-card.tsx'
import { Card, Row, Rows } from '../parts/card.tsx'
import { Screen } from '../screen.tsx'
import '../exception/exception.css'

const kinds: readonly CautionCard['kind'][] = ['mixture', 'chemical', 'gas', 'operation']

/** Every caution card, to read when nothing presses; one of them at `/safety/<id>`. */
export const SafetyScreen = () => {
  const { router } = useApp()
  const words = useWords().safety
  const [id] = router.here.value.rest
  const card = id ? cardById(id) : undefined
  if (card)
    return (
      <Screen title={card.name} back meta={card.use}>
        <CautionCardView card={card} />
        <p class="small quiet">{words.deferral}</p>
      </Screen>
    )
  return (
    <Screen title={words.title} back>
      <p class="small quiet">{words.deferral}</p>
      {kinds.map((kind) => (
        <Card key={kind} title={words.kinds[kind]}>
          <Rows>{cards.filter((it) => it.kind === kind).map((it) => <Row key={it.id} what={it.name} under={it.use} href={`/safety/${it.id}`} />)}</Rows>
        </Card>
      ))}
    </Screen>
  )
}
