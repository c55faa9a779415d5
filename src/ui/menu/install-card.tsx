import { useState } from 'preact/hooks'
import { useApp, useWords } from '../app-context.ts'
import { isInstalled, isKeptApart } from '../installed.ts'
import { Button } from '../parts/button.tsx'
import { Card } from '../parts/card.tsx'
import './menu.css'

/** Puts the app on the home screen: by the browser's own question, or by hand where the browser has none. */
export const InstallCard = ({ onLater }: { onLater?: () => void }) => {
  const { install } = useApp()
  const words = useWords().menu.install
  if (isInstalled() || !(install.value || isKeptApart())) return null
  return (
    <Card title={words.title}>
      <p>{words.why}</p>
      {install.value ? (
        <Button wide onPress={() => install.value?.ask()}>{words.ask}</Button>
      ) : (
        <ol class="steps">{words.byHand.map((step) => <li key={step}>{step}</li>)}</ol>
      )}
      {onLater ? <Button kind="plain" wide onPress={onLater}>{words.later}</Button> : null}
    </Card>
  )
}

const key = 'install'

const wasDeclined = (): boolean => {
  try {
    return localStorage.getItem(key) === 'later'
  } catch {
    return false
  }
}

/** Offered when a round is over, until somebody has said no once; from then on it waits on the page of the phone. */
export const InstallOffer = () => {
  const [isDeclined, setDeclined] = useState(wasDeclined)
  if (isDeclined) return null
  const later = (): void => {
    setDeclined(true)
    try {
      localStorage.setItem(key, 'later')
    } catch {
      // Storage switched off: then it is asked again, and the store has said so in its own words.
    }
  }
  return <InstallCard onLater={later} />
}
