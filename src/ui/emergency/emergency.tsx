import { darkRuleOf } from '../../safety/dark-work.ts'
import { emergencyCards } from '../../safety/emergency.ts'
import { useApp, useWords } from '../app-context.ts'
import { Card } from '../parts/card.tsx'
import { CallIcon, Onward } from '../parts/icons.tsx'
import { Deferral } from '../safety/deferral.tsx'
import { Screen } from '../screen.tsx'
import './emergency.css'

/** The first minute: large, without a gate, without a network. `/emergency` lists, `/emergency/eyes` opens one. */
export const Emergency = () => {
  const { plan, router } = useApp()
  const { emergency: words, safety } = useWords()
  const card = emergencyCards.find(({ id }) => id === router.here.value.rest[0])
  const emergency = plan.value?.plan.emergency
  const where = emergency ? (
    <dl class="where-to">
      <dt>{words.eyewash}</dt>
      <dd>{emergency.eyewash}</dd>
      <dt>{words.assembly}</dt>
      <dd>{emergency.assembly}</dd>
    </dl>
  ) : null
  const calls = (
    <ul class="calls" aria-label={words.call}>
      {(emergency?.calls ?? []).map(({ who, number }) => (
        <li key={number}>
          {/^[\d+ ()-]+$/.test(number) ? (
            <a href={`tel:${number.replace(/[^\d+]/g, '')}`}><CallIcon /> <span>{who}</span> <strong>{number}</strong></a>
          ) : (
            <p><CallIcon /> <span>{who}</span> <strong>{number}</strong></p>
          )}
        </li>
      ))}
    </ul>
  )
  if (card) {
    return (
      <Screen title={safety.say(card.title)} back>
        <ol class="first-minute">
          {card.steps.map((step) => <li key={step.key}>{safety.say(step.says)}</li>)}
        </ol>
        {calls}
        {where}
        <Deferral />
      </Screen>
    )
  }
  return (
    <Screen title={words.title} back>
      <ul class="emergencies">
        {emergencyCards.map(({ id, title }) => (
          <li key={id}><a href={`/emergency/${id}`}>{safety.say(title)}<Onward /></a></li>
        ))}
      </ul>
      {calls}
      {where}
      {plan.value ? (
        <Card title={words.light}>
          {plan.value.plan.machines.map(({ id, name, light }) => <p key={id}><strong>{name}.</strong> {safety.say(darkRuleOf(light).says)}</p>)}
        </Card>
      ) : null}
      <Deferral />
    </Screen>
  )
}
