import { useEffect, useState } from 'preact/hooks'
import { renderSVG } from 'uqr'
import { personOf } from '../../plan/find.ts'
import { enrolFragment, shownCode } from '../../wire/code.ts'
import type { CodesAnswer, Device } from '../../wire/devices.ts'
import { useApp, useWords } from '../app-context.ts'
import { timeText } from '../format.ts'
import type { NoAnswer } from '../office.ts'
import { Banner, Empty } from '../parts/banner.tsx'
import { Button } from '../parts/button.tsx'
import { Card, Row, Rows } from '../parts/card.tsx'
import { HoldToConfirm } from '../parts/hold-to-confirm.tsx'
import { Sheet } from '../parts/sheet.tsx'
import { Screen } from '../screen.tsx'
import { useDates } from '../use-dates.ts'
import { SignIn } from './sign-in.tsx'
import './menu.css'

/** The phones of the laboratory: who is in, who waits, who has not been heard from. */
export const DevicesPage = () => {
  const { office, person, plan, now } = useApp()
  const all = useWords()
  const words = all.menu.devicesPage
  const [devices, setDevices] = useState<readonly Device[]>()
  const [refusal, setRefusal] = useState<NoAnswer>()
  const [code, setCode] = useState<CodesAnswer>()
  const [asked, setAsked] = useState<{ device: Device; about: 'confirm' | 'revoked' | 'retired' }>()
  const inForce = plan.value?.plan
  const isSupervisor = inForce !== undefined && person.value !== null && personOf(inForce, person.value)?.role === 'supervisor'
  const proven = (office.provenUntil.value ?? 0) > now.value
  const enrolled = office.enrolled.value
  const own = enrolled.state === 'enrolled' ? enrolled.dev : undefined
  const zone = inForce?.timeZone ?? 'UTC'
  const { when } = useDates()

  const load = async (): Promise<void> => {
    const answer = await office.devices()
    if (answer.ok) setDevices(answer.value)
    setRefusal(answer.ok ? undefined : answer.refusal)
  }
  useEffect(() => {
    void load()
    const timer = setInterval(() => void load(), 3_000)
    return () => clearInterval(timer)
  }, [])
  const settle = async (answer: Promise<{ ok: true } | { ok: false; refusal: NoAnswer }>): Promise<void> => {
    const settled = await answer
    setAsked(undefined)
    setRefusal(settled.ok ? undefined : settled.refusal)
    await load()
  }
  const heardText = (device: Device): string =>
    device.heardAt === null ? words.neverHeard : words.heard(when(device.heardAt))
  const under = (device: Device): string =>
    [heardText(device), device.report?.waiting ? words.reportsWaiting(device.report.waiting) : '', device.dev === own ? words.thisOne : ''].filter(Boolean).join(' · ')
  return (
    <Screen
      title={words.title}
      back
      next={isSupervisor && proven ? <Button kind="go" onPress={() => office.code().then((answer) => (answer.ok ? setCode(answer.value) : setRefusal(answer.refusal)))}>{words.add}</Button> : null}
    >
      <div class="columns">
        {refusal ? <Banner kind="warn" title={all.enrol.noAnswer(refusal)}><Button onPress={() => load()}>{words.reload}</Button></Banner> : null}
        {isSupervisor && !proven ? <SignIn /> : null}
        {devices?.length === 0 ? <Empty title={words.none} /> : null}
        {devices?.length ? (
          <Card>
            <Rows>
              {devices.map((device) => (
                <Row
                  key={device.dev}
                  what={device.name}
                  under={under(device)}
                  value={<span class="small">{words.states[device.state]}</span>}
                  {...(isSupervisor && proven && (device.state === 'waiting' || (device.state === 'enrolled' && device.dev !== own))
                    ? { onPress: () => setAsked({ device, about: device.state === 'waiting' ? 'confirm' : 'revoked' }) }
                    : {})}
                />
              ))}
            </Rows>
          </Card>
        ) : null}
      </div>
      {code ? (
        <Sheet title={words.codeTitle} closeName={all.shell.close} onClose={() => setCode(undefined)}>
          <p>{words.codeMore}</p>
          <img class="qr" alt="" src={`data:image/svg+xml,${encodeURIComponent(renderSVG(`${location.origin}/${enrolFragment(code.long)}`, { border: 2, whiteColor: 'transparent' }))}`} />
          <p class="address">{location.origin}</p>
          <p class="digits">{shownCode(code.short)}</p>
          <p class="quiet">{words.until(timeText(code.until, zone))}</p>
        </Sheet>
      ) : null}
      {asked?.about === 'confirm' ? (
        <Sheet title={words.confirmTitle} closeName={all.shell.close} onClose={() => setAsked(undefined)}>
          <p>{asked.device.name}</p>
          <p class="digits">{asked.device.digits.slice(0, 3)} {asked.device.digits.slice(3)}</p>
          <p>{words.confirmMore}</p>
          <Button kind="go" onPress={() => settle(office.confirm(asked.device.dev, asked.device.digits))}>{words.confirm}</Button>
          <Button kind="stop" wide onPress={() => settle(office.end(asked.device.dev, 'revoked', 'digits'))}>{words.revoke}</Button>
        </Sheet>
      ) : null}
      {asked && asked.about !== 'confirm' ? (
        <Sheet title={words.endTitle(asked.device.name)} closeName={all.shell.close} onClose={() => setAsked(undefined)}>
          <p>{words.endMore}</p>
          <HoldToConfirm done={false} hint={words.endHold} onConfirm={() => void settle(office.end(asked.device.dev, 'revoked', 'lost'))}>{words.revoke}</HoldToConfirm>
          <HoldToConfirm done={false} hint={words.endHold} onConfirm={() => void settle(office.end(asked.device.dev, 'retired', 'unused'))}>{words.retire}</HoldToConfirm>
        </Sheet>
      ) : null}
    </Screen>
  )
}
