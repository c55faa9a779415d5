import { useState } from 'preact/hooks'
import type { TankLabel } from '../../rounds/tank-label.ts'
import { useApp, useWords } from '../app-context.ts'
import { Banner } from '../parts/banner.tsx'
import { Screen } from '../screen.tsx'
import { DarkGate } from './dark-gate.tsx'
import { openLabel } from './open-label.ts'
import { Scanner } from './scanner.tsx'

/** Any label of the laboratory, from Now: leads to its check and marks it as done at the tank. */
export const ScanScreen = () => {
  const app = useApp()
  const words = useWords().labels
  const [unknown, setUnknown] = useState<TankLabel>()
  const lights = app.plan.value?.plan.machines.map(({ light }) => light) ?? []
  const open = async (label: TankLabel): Promise<void> => {
    if ((await openLabel(app, label, true)) === 'nowhere') setUnknown(label)
  }
  return (
    <Screen title={words.title} back>
      <DarkGate lights={lights}>
        {unknown ? <Banner kind="warn" title={words.notInPlan} /> : null}
        <Scanner key={unknown ? JSON.stringify(unknown) : ''} onLabel={(label) => void open(label)} />
      </DarkGate>
    </Screen>
  )
}
