import { useErrorBoundary } from 'preact/hooks'
import { useApp, useWords } from './app-context.ts'
import { BareScreen } from './enrol/bare-screen.tsx'
import { useFault } from './fault.tsx'
import { lazy } from './lazy.tsx'
import { Banner } from './parts/banner.tsx'
import { Button, LinkButton } from './parts/button.tsx'
import { EmergencyIcon } from './parts/icons.tsx'

/** Nothing is drawn while these are fetched: they are there within a moment, and have no place of their own. */
const Nothing = () => null

const AppShell = lazy(() => import('./app.tsx').then((it) => it.AppShell), Nothing)
const Enrol = lazy(() => import('./enrol/enrol.tsx').then((it) => it.Enrol), Nothing, 'firstWords')
const Start = lazy(() => import('./enrol/start.tsx').then((it) => it.Start), Nothing)
const Setup = lazy(() => import('./menu/setup-page.tsx').then((it) => it.SetupPage), Nothing)
const Who = lazy(() => import('./enrol/who.tsx').then((it) => it.Who), Nothing, 'firstWords')

/** What a phone draws first. */
export const fetchFirst = (isEnrolled: boolean): Promise<void> => (isEnrolled ? Who : Enrol).fetch()

/** What stands between a phone and the record: a store that keeps, a laboratory, a plan, a person. The emergency card stands before all of it. */
export const Gate = () => {
  const { office, plan, isWhole, person, trouble, router, settingUp } = useApp()
  const [fault, clearFault] = useErrorBoundary()
  if (fault) return <Fault fault={fault} onAgain={clearFault} />
  // A held tail does not wait for a PIN; a splice shows nothing of the record.
  // The board shows machines and no people; nothing can be entered on it.
  const { place } = router.here.value
  if (place === 'emergency') return <AppShell />
  if ((place === 'splice' || place === 'board') && plan.value) return isWhole.value ? <AppShell /> : <Nothing />
  // Without a secure context there are no keys: nothing that could be signed or sent.
  if (router.here.value.place === 'setup' || !isSecureContext) return <Setup />
  // Whoever a revision took out of the plan no longer has this phone in hand.
  const Before = trouble.value === 'unavailable' ? NoStore : office.enrolled.value.state !== 'enrolled' ? Enrol : !plan.value || settingUp.value ? Start : person.value === null || !plan.value.plan.people.some(({ id }) => id === person.value) ? Who : isWhole.value ? undefined : Nothing
  if (!Before) return <AppShell />
  return (
    <>
      <Before />
      <EmergencyCorner />
    </>
  )
}

const Fault = ({ fault, onAgain }: { fault: unknown; onAgain(): void }) => {
  const { title, again, body } = useFault(fault)
  return <BareScreen title={title} next={<Button kind="go" onPress={onAgain}>{again}</Button>}>{body}</BareScreen>
}

const EmergencyCorner = () => {
  const words = useWords()
  return (
    <a class="icon-button emergency-button emergency-corner" href="/emergency" aria-label={words.shell.emergency}>
      <EmergencyIcon />
    </a>
  )
}

/** Nothing can be kept here, so nothing is begun. */
const NoStore = () => {
  const words = useWords()
  return (
    <BareScreen title={words.shell.noStore.title} next={<LinkButton kind="stop" wide href="/emergency">{words.shell.emergency}</LinkButton>}>
      <Banner kind="stop" title={words.shell.trouble.unavailable} />
      <p>{words.shell.noStore.more}</p>
    </BareScreen>
  )
}
