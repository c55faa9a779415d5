import type { ComponentType } from 'preact'
import { useState } from 'preact/hooks'
import { personOf } from '../../plan/find.ts'
import type { PersonId } from '../../plan/ids.ts'
import { useApp, useWords, type Theme } from '../app-context.ts'
import type { NoAnswer } from '../office.ts'
import { Banner } from '../parts/banner.tsx'
import { Button, LinkButton } from '../parts/button.tsx'
import { Card, Row, Rows } from '../parts/card.tsx'
import { Choices } from '../parts/field.tsx'
import { Sheet } from '../parts/sheet.tsx'
import { lazy } from '../lazy.tsx'
import { Screen } from '../screen.tsx'
import { SendingProblem } from '../sending-problem.tsx'
import { useDates } from '../use-dates.ts'
import { languages, type Language } from '../words/language.ts'
import { DevicesPage } from './devices-page.tsx'
import { FilesPage } from './files-page.tsx'
import './menu.css'

const pages: Record<string, ComponentType> = {
  devices: DevicesPage,
  files: FilesPage,
  first: lazy(() => import('../plan/first-steps.tsx').then((it) => it.FirstSteps)),
  labels: lazy(() => import('../labels/label-sheet.tsx').then((it) => it.LabelSheet)),
  phone: lazy(() => import('./phone-page.tsx').then((it) => it.PhonePage)),
  plan: lazy(() => import('../plan/plan.tsx').then((it) => it.Plan)),
}

export const Menu = () => {
  const { router } = useApp()
  const Page = pages[router.here.value.rest[0] ?? '']
  return Page ? <Page /> : <MenuList />
}

declare const __APP_VERSION__: string

const MenuList = () => {
  const { person, plan, theme, archive, sending } = useApp()
  const all = useWords()
  const words = all.menu
  const { when } = useDates()
  const inForce = plan.value?.plan
  const { waiting, oldestAt } = sending.value
  const has = person.value !== null && inForce ? personOf(inForce, person.value) : undefined
  return (
    <Screen title={words.title} back>
      <div class="columns">
        <Card title={words.person} beside={has?.name}>
          <Button wide onPress={() => (person.value = null)}>{words.lock}</Button>
        </Card>
        <Card title={words.look}>
          <Choices<Theme> name={words.look} of={[{ value: 'paper', says: words.paper }, { value: 'safelight', says: words.safelight }]} value={theme.value} onChange={(value) => (theme.value = value)} />
          <p class="small quiet">{words.lookMore}</p>
        </Card>
        <LanguageCard />
        <Card title={words.sending}>
          <SendingProblem />
          <p>{waiting ? words.waits(waiting) : words.nothingWaits}</p>
          {oldestAt !== undefined && inForce ? <p>{words.oldest(when(oldestAt))}</p> : null}
          <Button wide onPress={() => archive().then((it) => it.exchange())}>{words.sendNow}</Button>
          <Rows>
            <Row what={words.files.title} under={words.files.under} href="/menu/files" />
          </Rows>
        </Card>
        <Card title={words.laboratory}>
          <Rows>
            <Row what={words.plan} href="/menu/plan" />
            <Row what={words.devices} href="/menu/devices" />
            <Row what={words.safety} href="/safety" />
            <Row what={all.record.title} href="/record" />
            <Row what={words.phone.title} href="/menu/phone" />
          </Rows>
        </Card>
        {inForce?.demo && has?.role === 'supervisor' ? <WipeDemo laboratory={inForce.name} by={has.id} /> : null}
        <Card title={words.about} beside={words.version(__APP_VERSION__)}>
          <p>{words.aboutMore}</p>
          <LinkButton wide href="/licences.md" newWindow>{words.licences}</LinkButton>
        </Card>
      </div>
    </Screen>
  )
}

const LanguageCard = () => {
  const { language, speak } = useApp()
  const words = useWords().menu
  const [isMissing, setMissing] = useState(false)
  const choose = (to: Language): void => void speak(to).then(() => setMissing(false), () => setMissing(true))
  return (
    <Card title={words.language}>
      <Choices<Language> name={words.language} of={languages.map((value) => ({ value, says: words.languages[value] }))} value={language.value} onChange={choose} />
      {isMissing ? <Banner kind="warn" title={words.languageMissing} /> : null}
    </Card>
  )
}

/** Nothing in it was ever real: one tap, and one more that says what goes. */
const WipeDemo = ({ laboratory, by }: { laboratory: string; by: PersonId }) => {
  const { office } = useApp()
  const all = useWords()
  const words = all.menu.demo
  const [asked, setAsked] = useState(false)
  const [busy, setBusy] = useState(false)
  const [refusal, setRefusal] = useState<NoAnswer>()
  const wipe = async (): Promise<void> => {
    setBusy(true)
    const answer = await office.wipeDemo(laboratory, by)
    setBusy(false)
    setRefusal(answer.ok ? undefined : answer.refusal)
  }
  return (
    <Card title={words.wipe}>
      <p>{words.wipeMore}</p>
      <Button kind="stop" wide onPress={() => setAsked(true)}>{words.wipe}</Button>
      {asked ? (
        <Sheet title={words.sure(laboratory)} closeName={all.shell.close} onClose={() => setAsked(false)}>
          {refusal ? <Banner kind="stop" title={all.enrol.noAnswer(refusal)} /> : null}
          <p>{words.wipeMore}</p>
          <Button kind="stop" wide notYet={busy ? all.shell.loading : undefined} onPress={() => wipe()}>{words.yes}</Button>
          <Button wide onPress={() => setAsked(false)}>{words.keep}</Button>
        </Sheet>
      ) : null}
    </Card>
  )
}
