import { useEffect, useState } from 'preact/hooks'
import { useApp, useWords } from '../app-context.ts'
import { isInstalled, isKeptApart } from '../installed.ts'
import type { NoAnswer } from '../office.ts'
import { Banner } from '../parts/banner.tsx'
import { Button } from '../parts/button.tsx'
import { Card } from '../parts/card.tsx'
import { Field } from '../parts/field.tsx'
import { BareScreen } from './bare-screen.tsx'

/** From a phone that nobody knows to a device of the laboratory. */
export const Enrol = () => {
  const { office } = useApp()
  const words = useWords().enrol
  const enrolled = office.enrolled.value
  if (enrolled.state === 'waiting') return <Waiting digits={enrolled.digits} />
  return (
    <>
      {enrolled.state === 'ended' ? <Banner kind="stop" title={words.ended[enrolled.how === 'unknown' ? 'unknown' : 'out'].title}>{words.ended[enrolled.how === 'unknown' ? 'unknown' : 'out'].more}</Banner> : null}
      <Ask />
    </>
  )
}

const Ask = () => {
  const { office } = useApp()
  const words = useWords().enrol
  const [claimed, setClaimed] = useState<boolean>()
  const [refusal, setRefusal] = useState<NoAnswer>()
  const [asking, setAsking] = useState(false)
  const [tried, setTried] = useState(false)
  const [code, setCode] = useState(office.codeInAddress ?? '')
  const [deviceName, setDeviceName] = useState('')
  const [name, setName] = useState('')
  const [passphrase, setPassphrase] = useState('')

  const look = async (): Promise<void> => {
    setRefusal(undefined)
    const asked = await office.isClaimed()
    if (asked.ok) setClaimed(asked.value)
    else setRefusal(asked.refusal)
  }
  useEffect(() => void look(), [])

  if (claimed === undefined)
    return (
      <BareScreen title={words.title} next={refusal ? <Button kind="go" onPress={() => look()}>{words.tryAgain}</Button> : null}>
        {refusal ? <Banner kind="warn" title={words.offlineTitle}><p>{words.offline}</p><p>{words.noAnswer(refusal)}</p></Banner> : <p role="status">{words.asking}</p>}
      </BareScreen>
    )

  const needed = (value: string): string | undefined => (tried && !value.trim() ? words.needed : undefined)
  const ask = async (): Promise<void> => {
    setTried(true)
    if (!code.trim() || !deviceName.trim() || (!claimed && (!name.trim() || passphrase.length < 8))) return
    setAsking(true)
    setRefusal(undefined)
    const asked = await office.enrol({ code, deviceName: deviceName.trim(), ...(claimed ? {} : { firstSupervisor: { name: name.trim(), passphrase } }) })
    setAsking(false)
    if (!asked.ok) setRefusal(asked.refusal)
  }
  return (
    <BareScreen title={claimed ? words.title : words.first.title} next={<Button kind="go" notYet={asking ? words.asking : undefined} onPress={() => ask()}>{words.go}</Button>}>
      <p>{claimed ? words.more : words.first.more}</p>
      {isKeptApart() && !isInstalled() ? <Banner kind="warn" title={words.homeFirst}>{words.homeFirstMore}</Banner> : null}
      {refusal ? <Banner kind="stop" title={words.noAnswer(refusal)} /> : null}
      <Card>
        <Field name={words.code} hint={office.codeInAddress && code === office.codeInAddress ? words.codeFromAddress : words.codeHint} problem={needed(code)} value={code} onChange={setCode} />
        <Field name={words.deviceName} hint={words.deviceNameHint} problem={needed(deviceName)} value={deviceName} onChange={setDeviceName} />
        {claimed ? null : (
          <>
            <Field name={words.first.name} problem={needed(name)} value={name} onChange={setName} autocomplete="name" />
            <Field
              name={words.first.passphrase}
              kind="password"
              hint={words.first.passphraseHint}
              problem={tried && passphrase.length < 8 ? words.short : undefined}
              value={passphrase}
              onChange={setPassphrase}
              autocomplete="new-password"
            />
          </>
        )}
      </Card>
    </BareScreen>
  )
}

const askEveryMilliseconds = 2_000

const Waiting = ({ digits }: { digits: string }) => {
  const { office } = useApp()
  const words = useWords().enrol
  const [refusal, setRefusal] = useState<NoAnswer>()
  useEffect(() => {
    let asking = false
    const timer = setInterval(() => {
      if (asking || document.visibilityState !== 'visible') return
      asking = true
      void office.askAgain().then((asked) => {
        asking = false
        setRefusal(asked.ok ? undefined : asked.refusal)
      })
    }, askEveryMilliseconds)
    return () => clearInterval(timer)
  }, [])
  return (
    <BareScreen title={words.waitingTitle}>
      <p class="digits" aria-label={[...digits].join(' ')}>{digits.slice(0, 3)} {digits.slice(3)}</p>
      <p>{words.waiting}</p>
      {refusal ? <Banner kind="warn" title={words.noAnswer(refusal)} /> : null}
    </BareScreen>
  )
}
