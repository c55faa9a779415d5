import { useState } from 'preact/hooks'
import type { Check } from '../../plan/check.ts'
import { placeOf } from '../../plan/find.ts'
import { isLabelOf } from '../../rounds/label-leads.ts'
import type { TankLabel } from '../../rounds/tank-label.ts'
import { useApp, useWords } from '../app-context.ts'
import { Banner } from '../parts/banner.tsx'
import { Button } from '../parts/button.tsx'
import { Sheet } from '../parts/sheet.tsx'
import { DarkGate } from './dark-gate.tsx'
import { openLabel } from './open-label.ts'
import { Scanner } from './scanner.tsx'

/** The label of the place at which this check is done; another place's label says so and leads there. */
export const CheckLabel = ({ check, onHere, onClose }: { check: Check; onHere(): void; onClose(): void }) => {
  const app = useApp()
  const all = useWords()
  const words = all.labels
  const [other, setOther] = useState<TankLabel>()
  const plan = app.plan.value!.plan
  const { machine, station } = placeOf(plan, check.station)
  const seen = (label: TankLabel): void => {
    if (isLabelOf(label, check)) onHere()
    else setOther(label)
  }
  const nameOf = (label: TankLabel): string | undefined => {
    const at = 'station' in label ? label.station : plan.checks.find(({ id }) => id === label.check)?.station
    return plan.machines.flatMap(({ stations }) => stations).find(({ id }) => id === at)?.name
  }
  const otherName = other && nameOf(other)
  return (
    <Sheet title={words.scanAt(station.name)} closeName={all.shell.close} onClose={onClose}>
      <DarkGate lights={check.darkWork ? [machine.light] : []}>
        {other ? (
          <Banner kind="warn" title={otherName ? words.otherPlace(otherName, station.name) : words.notInPlan}>
            {otherName ? <Button wide onPress={() => void openLabel(app, other, true)}>{words.goThere(otherName)}</Button> : null}
          </Banner>
        ) : null}
        <Scanner key={other ? JSON.stringify(other) : ''} onLabel={seen} />
      </DarkGate>
    </Sheet>
  )
}
