import { useEffect, useState } from 'preact/hooks'
import { parseTankLabel } from '../../rounds/tank-label.ts'
import { useApp, useWords } from '../app-context.ts'
import { Banner } from '../parts/banner.tsx'
import { LinkButton } from '../parts/button.tsx'
import { Screen } from '../screen.tsx'
import { openLabel } from './open-label.ts'

/**
 * The address of a label, opened by the phone's own camera or typed. It leads to the check all the same, but an address can be opened
 * from anywhere: only the camera of this app marks a reading as taken at the tank.
 */
export const AtScreen = () => {
  const app = useApp()
  const words = useWords()
  const [unread, setUnread] = useState(false)
  useEffect(() => {
    const read = parseTankLabel(app.router.here.value.path, location.origin)
    if (!read.ok) setUnread(true)
    else void openLabel(app, read.label, false).then((to) => setUnread(to === 'nowhere'))
  }, [])
  return (
    <Screen title={words.labels.title} next={unread ? <LinkButton kind="go" href="/now">{words.shell.notFound.go}</LinkButton> : null}>
      {unread ? <Banner kind="warn" title={words.labels.notInPlan} /> : null}
    </Screen>
  )
}
