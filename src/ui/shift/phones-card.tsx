import { useEffect, useState } from 'preact/hooks'
import type { LabPlan } from '../../plan/lab-plan.ts'
import type { Device } from '../../wire/devices.ts'
import { useApp, useWords } from '../app-context.ts'
import { Card, Row, Rows } from '../parts/card.tsx'
import { useDates } from '../use-dates.ts'

/** The phones of the laboratory: those not heard from since the shift ended or that still hold entries first. */
export const PhonesCard = ({ plan, since }: { plan: LabPlan; since: number }) => {
  const { office, sending, lab, now } = useApp()
  const all = useWords()
  const words = all.shift.phones
  const [devices, setDevices] = useState<readonly Device[]>()
  const [isOffline, setIsOffline] = useState(false)
  const minute = Math.floor(now.value / 60_000)
  useEffect(() => {
    let isWanted = true
    void office.devices().then((answer) => {
      if (!isWanted) return
      setIsOffline(!answer.ok)
      if (answer.ok) setDevices(answer.value)
    })
    return () => {
      isWanted = false
    }
  }, [lab.value, minute])
  const enrolled = office.enrolled.value
  const own = enrolled.state === 'enrolled' ? enrolled.dev : undefined
  const { when } = useDates(plan.timeZone)
  const rows = (devices ?? [])
    .filter(({ state }) => state === 'enrolled')
    .map((it) => {
      const waiting = it.dev === own ? sending.value.waiting : (it.report?.waiting ?? 0)
      return { ...it, waiting, isSilent: it.dev !== own && (it.heardAt ?? 0) < since }
    })
    .sort((a, b) => Number(b.isSilent || b.waiting > 0) - Number(a.isSilent || a.waiting > 0))
  return (
    <Card title={words.title}>
      {isOffline ? <p class="small quiet">{words.offline}</p> : null}
      {isOffline && sending.value.waiting ? <p>{words.ownWaiting(sending.value.waiting)}</p> : null}
      <Rows>
        {rows.map(({ dev, name, heardAt, waiting, isSilent }) => (
          <Row
            key={dev}
            what={name}
            under={dev === own ? words.own : heardAt === null ? all.shift.sign.neverHeard : all.shift.sign.silentSince(when(heardAt))}
            value={<span class="small">{isSilent || waiting ? <strong>{[isSilent ? words.silent : '', waiting ? words.waiting(waiting) : ''].filter(Boolean).join(', ')}</strong> : words.allSent}</span>}
          />
        ))}
      </Rows>
    </Card>
  )
}
