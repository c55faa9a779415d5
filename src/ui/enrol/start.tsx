import { useEffect, useState } from 'preact/hooks'
import { inWords } from '../../plan/in-words.ts'
import type { LabPlan, Person } from '../../plan/lab-plan.ts'
import { parsePlan, type PlanProblem } from '../../plan/plan-problems.ts'
import type { EntryId } from '../../record/ids.ts'
import { useApp, useWords } from '../app-context.ts'
import { Banner } from '../parts/banner.tsx'
import { Button } from '../parts/button.tsx'
import { Card } from '../parts/card.tsx'
import { SavingProblem } from '../saving-problem.tsx'
import { useSaving } from '../saving.ts'
import { lazy } from '../lazy.tsx'
import { sayIn } from '../words/plan-names.ts'
import { BareScreen } from './bare-screen.tsx'

const FirstLaboratory = lazy(() => import('../plan/first-laboratory.tsx').then((it) => it.FirstLaboratory))

const shownProblems = 5
/** A first plan speaks for the readings noted shortly before it was put in force. */
const wellBefore = 24 * 3_600_000

/** A device of a laboratory that has no plan yet: the first supervisor chooses, everybody else waits for it to arrive. */
export const Start = () => {
  const { office, phone, settingUp, language } = useApp()
  const all = useWords()
  const words = all.enrol
  const { first } = all.plan
  const saving = useSaving()
  const [me, setMe] = useState<Awaited<ReturnType<typeof office.firstSupervisor>>>()
  const [problems, setProblems] = useState<readonly PlanProblem[] | 'notJson'>()
  const [isOwn, setOwn] = useState(false)
  const loading = settingUp.value
  useEffect(() => void office.firstSupervisor().then(setMe), [])

  const begin = async (plan: LabPlan): Promise<EntryId | undefined> => {
    const people: Person[] = me && !plan.people.some(({ id }) => id === me.id) ? [{ ...me, role: 'supervisor' }, ...plan.people] : plan.people
    return saving.save('plan', { plan: { ...plan, people }, effectiveFrom: phone.clock.now() - wellBefore })
  }
  /** The invented past is written entry by entry, each naming when it was noted and by whom, as a real one would have been. */
  const demo = async (): Promise<void> => {
    settingUp.value = { done: 0, of: 0 }
    try {
      const [{ demoLab }, { demoHistory }, { appendable }, say] = await Promise.all([import('../../demo/lab.ts'), import('../../demo/history.ts'), import('../../demo/draft.ts'), sayIn(language.value, 'demo')])
      const plan = inWords(demoLab(), say)
      const entry = await begin(plan)
      if (!entry) return
      const drafts = demoHistory({ seed: 7, plan, planEntry: entry, until: phone.clock.now(), shifts: 1 })
      const became = new Map<EntryId, EntryId>()
      for (const [done, draft] of drafts.entries()) {
        const { kind, data } = appendable(draft, became)
        became.set(draft.id, await phone.append(kind, inWords(data, say), { by: draft.person }))
        if (done % 20 === 0) settingUp.value = { done, of: drafts.length }
      }
    } finally {
      settingUp.value = undefined
    }
  }
  const file = async (chosen: File): Promise<void> => {
    let raw: unknown
    try {
      raw = JSON.parse(await chosen.text())
    } catch {
      setProblems('notJson')
      return
    }
    const parsed = parsePlan(raw)
    if (parsed.ok) await begin(parsed.plan)
    else setProblems(parsed.problems)
  }

  // How many there are is known when they have been told.
  const said = loading && (loading.of ? words.start.loading(loading.done, loading.of) : all.shell.loading)
  if (!me) {
    return (
      <BareScreen title={words.start.join}>
        <p role="status">{words.start.joinMore}</p>
        <Button onPress={() => phone.sendNow()}>{words.tryAgain}</Button>
      </BareScreen>
    )
  }
  if (isOwn) return <FirstLaboratory me={{ ...me, role: 'supervisor' }} onBack={() => setOwn(false)} begin={async (plan) => (await begin(plan)) !== undefined} />
  return (
    <BareScreen title={words.start.title}>
      <SavingProblem of={saving} />
      <Card title={first.own}>
        <p>{first.ownMore}</p>
        <Button kind="go" onPress={() => setOwn(true)}>{first.own}</Button>
      </Card>
      <Card title={words.start.demo}>
        <p>{words.start.demoMore}</p>
        <Button kind="go" notYet={said} onPress={() => demo()}>{said ?? words.start.demo}</Button>
      </Card>
      <Card title={words.start.file}>
        <p>{words.start.fileMore}</p>
        {problems ? (
          <Banner kind="stop" title={problems === 'notJson' ? words.start.notJson : words.start.problems}>
            {problems === 'notJson' ? null : (
              <ul>
                {problems.slice(0, shownProblems).map((it) => <li key={it.path}><code>{it.path}</code>: {it.detail || it.code}</li>)}
                {problems.length > shownProblems ? <li>{words.start.moreProblems(problems.length - shownProblems)}</li> : null}
              </ul>
            )}
          </Banner>
        ) : null}
        <label class="button wide">
          {words.start.file}
          <input class="unseen" type="file" accept="application/json,.json" onChange={(event) => { const input = event.currentTarget; const [chosen] = input.files ?? []; if (chosen) void file(chosen).finally(() => { input.value = '' }) }} />
        </label>
      </Card>
    </BareScreen>
  )
}
