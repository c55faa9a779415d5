import { useState } from 'preact/hooks'
import { encode } from 'uqr'
import { checksOfMachine } from '../../plan/find.ts'
import type { LabPlan } from '../../plan/lab-plan.ts'
import type { Machine } from '../../plan/machine.ts'
import { tankLabelPath, type TankLabel } from '../../rounds/tank-label.ts'
import { useApp, useWords } from '../app-context.ts'
import { Banner, Empty } from '../parts/banner.tsx'
import { Button } from '../parts/button.tsx'
import { Choices } from '../parts/field.tsx'
import { Screen } from '../screen.tsx'
import './labels.css'

type Each = 'station' | 'check'

interface Printed {
  label: TankLabel
  title: string
  under: string
}

/** Labels for the tanks, printed from the plan in force: one for each place at which something is checked, or one for each check. */
export const LabelSheet = () => {
  const { plan } = useApp()
  const all = useWords()
  const words = all.labels
  const [each, setEach] = useState<Each>('station')
  const [machine, setMachine] = useState('')
  const inForce = plan.value?.plan
  if (!inForce) return <Screen title={words.sheetTitle} back><Empty title={all.now.noPlan.title} /></Screen>
  const machines = inForce.machines.filter(({ id }) => machine === '' || id === machine)
  const printed = machines.flatMap((it) => printedOf(inForce, it, each))
  const isLocal = /^(localhost|127\.|\[::1\])/.test(location.hostname)
  return (
    <Screen title={words.sheetTitle} back meta={words.count(printed.length)} next={<Button kind="go" onPress={() => print()}>{words.print}</Button>}>
      <div class="not-printed stack">
        <p class="small quiet">{words.sheetMore(location.origin)}</p>
        {isLocal ? <Banner kind="warn" title={words.local} /> : null}
        <Choices<Each> name={words.each} of={[{ value: 'station', says: words.eachStation }, { value: 'check', says: words.eachCheck }]} value={each} onChange={setEach} />
        {inForce.machines.length > 1 ? (
          <Choices<string> name={words.machine} of={[{ value: '', says: words.allMachines }, ...inForce.machines.map(({ id, name }) => ({ value: id as string, says: name }))]} value={machine} onChange={setMachine} />
        ) : null}
      </div>
      <ul class="labels" aria-label={words.sheetTitle}>
        {printed.map((it) => <Label key={tankLabelPath(it.label)} printed={it} laboratory={inForce.name} />)}
      </ul>
    </Screen>
  )
}

const printedOf = (plan: LabPlan, machine: Machine, each: Each): Printed[] => {
  const checks = checksOfMachine(plan, machine)
  const stationName = (id: string): string => machine.stations.find((it) => it.id === id)?.name ?? id
  if (each === 'check') return checks.map(({ id, name, station }) => ({ label: { check: id }, title: name, under: `${stationName(station)} · ${machine.name}` }))
  return machine.stations.filter(({ id }) => checks.some(({ station }) => station === id)).map(({ id, name }) => ({ label: { station: id }, title: name, under: machine.name }))
}

/** Quiet zone of four squares all round, as ISO/IEC 18004 asks; quarter-strength correction, since labels get splashed. */
const Label = ({ printed: { label, title, under }, laboratory }: { printed: Printed; laboratory: string }) => {
  const words = useWords().labels
  const { data, size } = encode(`${location.origin}${tankLabelPath(label)}`, { ecc: 'Q', border: 4 })
  const path = data.flatMap((row, y) => row.flatMap((dark, x) => (dark ? [`M${x} ${y}h1v1h-1z`] : []))).join('')
  return (
    <li>
      <svg viewBox={`0 0 ${size} ${size}`} shape-rendering="crispEdges" role="img" aria-label={words.codeOf(title)}>
        <path d={path} />
      </svg>
      <div>
        <strong>{title}</strong>
        <span>{under}</span>
        <span class="laboratory">{laboratory}</span>
      </div>
    </li>
  )
}
