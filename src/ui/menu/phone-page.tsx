import { useEffect, useState } from 'preact/hooks'
import { useWords } from '../app-context.ts'
import { Banner } from '../parts/banner.tsx'
import { Button } from '../parts/button.tsx'
import { CallMe } from '../parts/call-me.tsx'
import { Card, Row, Rows } from '../parts/card.tsx'
import { SentIcon } from '../parts/icons.tsx'
import { Screen } from '../screen.tsx'
import { capabilities } from './capabilities.ts'
import { InstallCard } from './install-card.tsx'

const sizeText = (bytes: number): string => (bytes >= 1e9 ? `${(bytes / 1e9).toFixed(1)} GB` : `${Math.max(1, Math.round(bytes / 1e6))} MB`)

/** What this phone can and cannot do for the app, and what follows. */
export const PhonePage = () => {
  const words = useWords().menu.phone
  const [room, setRoom] = useState<StorageEstimate>()
  useEffect(() => void navigator.storage?.estimate?.().then(setRoom), [])
  return (
    <Screen title={words.title} back meta={room?.quota ? words.room(sizeText(room.usage ?? 0), sizeText(room.quota)) : undefined}>
      <div class="columns">
        <InstallCard />
        <Capabilities />
      </div>
    </Screen>
  )
}

export const Capabilities = () => {
  const words = useWords().menu.phone
  const [found, setFound] = useState<Awaited<ReturnType<typeof capabilities>>>()
  const look = (): void => void capabilities().then(setFound)
  useEffect(look, [])
  const lacks = found?.filter(({ has }) => !has) ?? []
  const has = found?.filter((it) => it.has) ?? []
  return (
    <>
      {found && lacks.length === 0 ? <Banner title={words.all} /> : null}
      {lacks.length ? (
        <Card title={words.lacks}>
          <Rows>
            {lacks.map(({ capability }) => <Row key={capability} what={<strong>{words.checks[capability].name}</strong>} under={words.checks[capability].without} />)}
          </Rows>
          {lacks.some(({ capability }) => capability === 'persisted') && isSecureContext ? (
            <Button onPress={() => navigator.storage?.persist?.().then(look)}>{words.askPersist}</Button>
          ) : null}
          <CallMe />
        </Card>
      ) : null}
      {has.length ? (
        <Card title={words.has}>
          <Rows>{has.map(({ capability }) => <Row key={capability} what={words.checks[capability].name} value={<SentIcon />} />)}</Rows>
        </Card>
      ) : null}
    </>
  )
}
