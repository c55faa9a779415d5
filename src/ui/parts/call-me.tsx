import { useState } from 'preact/hooks'
import { useWords } from '../app-context.ts'
import { Button } from './button.tsx'

const mayBeAsked = (): boolean => 'Notification' in globalThis && Notification.permission === 'default'

/** Offered where somebody is about to put the phone away and wait; a browser asks only once, and only after a tap. */
export const CallMe = () => {
  const words = useWords().notices
  const [offered, setOffered] = useState(mayBeAsked)
  if (!offered) return null
  return <Button wide onPress={() => void Notification.requestPermission().then(() => setOffered(mayBeAsked()))}>{words.callMe}</Button>
}
