import type { ComponentType } from 'preact'
import { useState } from 'preact/hooks'
import { personOf } from '../../plan/find.ts'
import { useApp, useWords, type Theme } from '../app-context.ts'
import type { NoAnswer } from '../office.ts'
import { Banner } from '../parts/banner.tsx'
import { Button, LinkButton } from '../parts/button.tsx'
import { Card, Row, Rows } from '../parts/card.tsx'
import { Choices } from '../parts/field.tsx'
import { HoldToConfirm } from '../parts/hold-to-confirm.tsx'
import { lazy } from '../lazy.tsx'
import { Screen } from '../screen.tsx'
import { SendingProblem } from '../sending-problem.tsx'
import { LabelSheet } from '../labels/label-sheet.tsx'
import { useDates } from '../use-dates.ts'
import { languages, type Language } from '../words/language.ts'
import { DevicesPage } from './devices-page.tsx'
import { FilesPage } from './files-page.tsx'
import { PhonePage } from './phone-page.tsx'
import { SignIn } from './sign-in.tsx'
import './menu.css'

const pages: Record<string, ComponentType> = {
  devices: DevicesPage,
  files: FilesPage,
  first: lazy(() => import('../plan/first-steps.tsx').then((it) => it.FirstSteps)),
  labels: LabelSheet,
  phone: PhonePage,
  plan: lazy(() => import('../plan/plan.tsx').then((it) => it.Plan)),
}

export const Menu = () => {
  const { router } = useApp()
  const Page = pages[router.here.value.rest[0] ?? '']
  return Page ? <Page /> : <MenuList />
}

declare const __APP_VERSION__: string

const MenuList = () => {
  const { person, plan, theme, phone, sending } = useApp()
  const words = useWords().menu
  const { when } = useDates()
  const inForce = plan.value?.plan
  const { waiting, oldestAt } = sending.value
  const has = person.value !== null && inForce ? personOf(inForce, person.value) : undefined
  return (
    <Screen title={words.title} back>
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
        <Button wide onPress={() => phone.sendNow()}>{words.sendNow}</Button>
        <Rows>
          <Row what={words.files.title} under={words.files.under} href="/menu/files" />
        </Rows>
      </Card>
      <Card title={words.laboratory}>
        <Rows>
          <Row what={words.plan} href="/menu/plan" />
          <Row what={words.devices} href="/menu/devices" />
          <Row what={words.safety} href="/safety" />
          <Row what={words.phone.title} href="/menu/phone" />
        </Rows>
      </Card>
      {inForce?.demo && has?.role === 'supervisor' ? <WipeDemo laboratory={inForce.name} /> : null}
      <Card title={words.about} beside={words.version(__APP_VERSION__)}>
        <p>{words.aboutMore}</p>
        <LinkButton wide href="/licences.md" newWindow>{words.licences}</LinkButton>
      </Card>
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

const WipeDemo = ({ laboratory }: { laboratory: string }) => {
  const { office, now } = useApp()
  const all = useWords()
  const words = all.menu.demo
  const [asked, setAsked] = useState(false)
  const [refusal, setRefusal] = useState<NoAnswer>()
  const proven = (office.provenUntil.value ?? 0) > now.value
  if (!asked) return <Card title={words.wipe}><p>{words.wipeMore}</p><Button kind="stop" wide onPress={() => setAsked(true)}>{words.wipe}</Button></Card>
  if (!proven) return <SignIn />
  const wipe = async (): Promise<void> => {
    const answer = await office.wipeDemo(laboratory)
    setRefusal(answer.ok ? undefined : answer.refusal)
  }
  return (
    <Card title={words.wipe}>
      {refusal ? <Banner kind="stop" title={all.enrol.noAnswer(refusal)} /> : null}
      <p>{words.wipeMore}</p>
      <HoldToConfirm done={false} hint={words.wipeHold} onConfirm={() => void wipe()}>{words.wipe}</HoldToConfirm>
    </Card>
  )
}
