import { useState } from 'preact/hooks'
import type { Check } from '../../plan/check.ts'
import { checksOfMachine, personOf } from '../../plan/find.ts'
import { parsePlan, type PlanProblem } from '../../plan/plan-problems.ts'
import { useApp, useWords } from '../app-context.ts'
import { dateText, decimalsOf, numberText, timeText } from '../format.ts'
import { Banner, Empty } from '../parts/banner.tsx'
import { Button, LinkButton } from '../parts/button.tsx'
import { Card, Row, Rows } from '../parts/card.tsx'
import { SavingProblem } from '../saving-problem.tsx'
import { useSaving } from '../saving.ts'
import { Screen } from '../screen.tsx'
import { saveFile } from './save-file.ts'

/** The plan in force, who set which aim, and its way in and out as a file. */
export const PlanPage = () => {
  const { plan: inForce, person, phone } = useApp()
  const all = useWords()
  const words = all.menu.planPage
  const saving = useSaving()
  const [problems, setProblems] = useState<readonly PlanProblem[] | 'notJson'>()
  const [done, setDone] = useState(false)
  const current = inForce.value
  if (!current) return <Screen title={words.title} back><Empty title={all.now.noPlan.title} /></Screen>
  const { plan } = current
  const isSupervisor = person.value !== null && personOf(plan, person.value)?.role === 'supervisor'
  const starting = plan.checks.filter(({ setBy }) => setBy.kind === 'startingValue').length
  const take = async (file: File): Promise<void> => {
    setProblems(undefined)
    setDone(false)
    let raw: unknown
    try {
      raw = JSON.parse(await file.text())
    } catch {
      setProblems('notJson')
      return
    }
    const parsed = parsePlan(raw)
    if (!parsed.ok) setProblems(parsed.problems)
    else setDone((await saving.save('plan', { plan: parsed.plan, effectiveFrom: phone.clock.now() })) !== undefined)
  }
  const setByText = (check: Check): string => {
    if (check.setBy.kind === 'startingValue') return `${words.startingValue}: ${check.setBy.source}`
    return words.setBy(personOf(plan, check.setBy.person)?.name ?? check.setBy.person, dateText(Date.parse(check.setBy.at), plan.timeZone, 'en'))
  }
  const aimText = (check: Check): string =>
    check.kind === 'reading' ? `${words.aim} ${numberText(check.limits.aim, decimalsOf(check.step))} ${check.unit}` : words[check.kind]
  return (
    <Screen title={plan.name} back meta={words.inForceSince(`${dateText(current.from, plan.timeZone, 'en')} ${timeText(current.from, plan.timeZone)}`)}>
      {starting > 0 ? <Banner kind="warn" title={words.startingValues(starting, plan.checks.length)} /> : null}
      {done ? <Banner title={words.done} /> : null}
      <SavingProblem of={saving} />
      {problems ? (
        <Banner kind="stop" title={problems === 'notJson' ? all.enrol.start.notJson : all.enrol.start.problems}>
          {problems === 'notJson' ? null : <ul>{problems.slice(0, 8).map((it) => <li key={it.path}><code>{it.path}</code>: {it.detail || it.code}</li>)}</ul>}
        </Banner>
      ) : null}
      {plan.machines.map((machine) => (
        <Card key={machine.id} title={machine.name}>
          <Rows>
            {checksOfMachine(plan, machine).map((check) => (
              <Row key={check.id} what={`${machine.stations.find(({ id }) => id === check.station)?.name} · ${check.name}`} under={setByText(check)} value={<span class="small">{aimText(check)}</span>} />
            ))}
          </Rows>
        </Card>
      ))}
      <Card title={words.people}>
        <Rows>{plan.people.map((it) => <Row key={it.id} what={it.name} value={all.enrol.who[it.role]} />)}</Rows>
      </Card>
      <Card title={words.materials}>
        <Rows>{plan.materials.map((it) => <Row key={it.id} what={it.name} />)}</Rows>
      </Card>
      <Card>
        <LinkButton wide href="/menu/labels">{all.labels.sheetTitle}</LinkButton>
        <Button wide onPress={() => saveFile('lab-plan.json', JSON.stringify(plan, null, 2))}>{words.exportFile}</Button>
        {isSupervisor ? (
          <>
            <label class="button wide">
              {words.importFile}
              <input class="unseen" type="file" accept="application/json,.json" onChange={(event) => { const [chosen] = event.currentTarget.files ?? []; if (chosen) void take(chosen) }} />
            </label>
            <p class="small quiet">{words.importMore}</p>
          </>
        ) : null}
      </Card>
    </Screen>
  )
}
