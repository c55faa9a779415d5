import { useEffect, useState } from 'preact/hooks'
import type { LabPlan } from '../../plan/lab-plan.ts'
import type { Device } from '../../wire/devices.ts'
import { useApp, useWords } from '../app-context.ts'
import { Card, Row, Rows } from '../parts/card.tsx'
import { useDates } from '../use-dates.ts'

/** Phones that have not been heard since the shift ended, or that said they hold entries: what they bring comes after the signature. */
export const SilentPhones = ({ plan, since }: { plan: LabPlan; since: number }) => {
  const { office } = useApp()
  const words = useWords().shift.sign
  const { when } = useDates(plan.timeZone)
  const [devices, setDevices] = useState<readonly Device[]>([])
  useEffect(() => void office.devices().then((answer) => { if (answer.ok) setDevices(answer.value) }), [])
  const enrolled = office.enrolled.value
  const own = enrolled.state === 'enrolled' ? enrolled.dev : undefined
  const silent = devices.filter((it) => it.state === 'enrolled' && it.dev !== own && ((it.heardAt ?? 0) < since || (it.report?.waiting ?? 0) > 0))
  if (silent.length === 0) return null
  const heard = (it: Device): string => (it.heardAt === null ? words.neverHeard : words.silentSince(when(it.heardAt)))
  return (
    <Card title={words.silent} level={3}>
      <Rows>{silent.map((it) => <Row key={it.dev} what={it.name} under={[heard(it), it.report?.waiting ? words.waiting(it.report.waiting) : ''].filter(Boolean).join(' · ')} />)}</Rows>
    </Card>
  )
}
