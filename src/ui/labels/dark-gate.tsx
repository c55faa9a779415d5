import type { ComponentChildren } from 'preact'
import { useState } from 'preact/hooks'
import type { Machine } from '../../plan/machine.ts'
import { darkRuleOf, redThemeSays } from '../../safety/dark-work.ts'
import { useWords } from '../app-context.ts'
import { Banner } from '../parts/banner.tsx'
import { Button } from '../parts/button.tsx'

/** In the order of what they bear: the stock that bears least decides what is said. */
const byTenderness: readonly Machine['light'][] = ['panchromatic', 'orthochromatic', 'blueSensitive']

/** A camera lights the screen fully. Before it opens, somebody says that no film lies open here; the rule of the tenderest stock is read first. */
export const DarkGate = ({ lights, children }: { lights: readonly Machine['light'][]; children: ComponentChildren }) => {
  const { labels: words, safety } = useWords()
  const [isLit, setLit] = useState(false)
  const light = byTenderness.find((it) => lights.includes(it))
  if (isLit || !light) return <>{children}</>
  return (
    <Banner kind="warn" title={words.dark.title}>
      <p>{safety.say(darkRuleOf(light).says)}</p>
      <p>{safety.say(redThemeSays)}</p>
      <Button kind="go" onPress={() => setLit(true)}>{words.dark.lit}</Button>
    </Banner>
  )
}
