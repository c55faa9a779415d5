import { useApp, useWords } from '../app-context.ts'
import { Banner } from '../parts/banner.tsx'
import { Button, LinkButton } from '../parts/button.tsx'
import { Card } from '../parts/card.tsx'
import { SavingProblem } from '../saving-problem.tsx'
import { useSaving } from '../saving.ts'
import { Screen } from '../screen.tsx'
import './plan.css'

/** After the first plan: labels for the tanks, the other phones, then the first round of the machine that was just described. */
export const FirstSteps = () => {
  const { plan, router } = useApp()
  const all = useWords()
  const words = all.plan.first
  const saving = useSaving()
  const machine = plan.value?.plan.machines[0]
  const start = async (): Promise<void> => {
    if (!machine) return
    // Checks fall due while the machine runs; the round is walked on a running machine.
    const saved = await saving.save('run', { machine: machine.id, state: 'running', metresPerMinute: machine.aimMetresPerMinute })
    if (saved) router.go(`/round/${machine.id}`)
  }
  return (
    <Screen title={words.ready} next={machine ? <Button kind="go" notYet={saving.busy ? all.shell.loading : undefined} onPress={() => start()}>{words.startRound(machine.name)}</Button> : null}>
      <SavingProblem of={saving} />
      <Banner kind="warn" title={words.starting}><span class="small">{words.replace}</span></Banner>
      <div class="columns">
        <Card title={all.plan.labels}>
          <p>{words.labelsMore}</p>
          <LinkButton wide href="/menu/labels">{words.printLabels}</LinkButton>
        </Card>
        <Card title={all.menu.devices}>
          <p>{words.phonesMore}</p>
          <LinkButton wide href="/menu/devices">{all.menu.devicesPage.add}</LinkButton>
        </Card>
        <Card title={all.plan.title}>
          <p>{words.planMore}</p>
          <LinkButton wide href="/menu/plan">{all.plan.title}</LinkButton>
          <LinkButton wide href="/menu/plan/laboratory">{words.emergency}</LinkButton>
        </Card>
      </div>
      <p class="small quiet">{words.roundMore}</p>
    </Screen>
  )
}
