import { useState } from 'preact/hooks'
import { planChanges } from '../../plan/changes.ts'
import type { PlanProblem } from '../../plan/plan-problems.ts'
import type { PlanInForce } from '../../projections/plans.ts'
import { useApp, useWords } from '../app-context.ts'
import { saveFile } from '../menu/save-file.ts'
import { Banner } from '../parts/banner.tsx'
import { Button, LinkButton } from '../parts/button.tsx'
import { Card, Row, Rows } from '../parts/card.tsx'
import { HoldToConfirm } from '../parts/hold-to-confirm.tsx'
import { Sheet } from '../parts/sheet.tsx'
import { useDates } from '../use-dates.ts'
import { AddPart } from './add-part.tsx'
import { parseDraft } from './parse-draft.ts'
import { moved, OrderedRows } from './ordered-rows.tsx'
import { partHref } from './place-of.ts'
import { planFile, readPlanFile } from './plan-file.ts'
import { PlanScreen } from './plan-screen.tsx'
import { ProblemList } from './problem-list.tsx'
import { problemsOfPart } from './problems-of-part.ts'
import type { Draft } from './use-draft.ts'

/** The plan as a whole: what is in it, what waits to be signed, its revisions, its way in and out as a file. */
export const PlanHome = () => {
  const { plan: inForce } = useApp()
  const words = useWords().plan
  const zone = inForce.value?.plan.timeZone ?? 'UTC'
  const { when } = useDates(zone)
  return (
    <PlanScreen
      draw={(draft) => ({
        title: draft.plan.name || words.title,
        meta: inForce.value ? words.inForceSince(when(inForce.value.from)) : undefined,
        body: (
          <>
            <Waiting draft={draft} />
            <Starting draft={draft} />
            <Parts draft={draft} />
            <Revisions draft={draft} when={when} />
            <Files draft={draft} />
          </>
        ),
      })}
    />
  )
}

const Waiting = ({ draft }: { draft: Draft }) => {
  const all = useWords()
  const words = all.plan.draft
  const [asked, setAsked] = useState(false)
  if (!draft.changes.length) return null
  return (
    <Banner title={words.title(draft.changes.length)}>
      <p>{words.more}</p>
      <Button wide kind="stop" onPress={() => setAsked(true)}>{words.drop}</Button>
      {asked ? (
        <Sheet title={words.drop} closeName={all.shell.close} onClose={() => setAsked(false)}>
          <HoldToConfirm done={false} hint={words.dropHold} onConfirm={() => { setAsked(false); void draft.drop() }}>{words.drop}</HoldToConfirm>
        </Sheet>
      ) : null}
    </Banner>
  )
}

const Starting = ({ draft }: { draft: Draft }) => {
  const words = useWords().plan
  const { checks } = draft.plan
  const starting = checks.filter(({ setBy }) => setBy.kind === 'startingValue').length
  return starting ? <Banner kind="warn" title={words.startingValues(starting, checks.length)}><span class="small">{words.startingValuesMore}</span></Banner> : null
}

const Parts = ({ draft }: { draft: Draft }) => {
  const words = useWords().plan
  const { plan, parsed, mayEdit, change } = draft
  const mend = (list: Parameters<typeof problemsOfPart>[2], id?: string) => {
    const count = parsed.ok ? 0 : problemsOfPart(parsed.problems, plan, list, id).length
    return count ? <span class="small mend">{words.toMend(count)}</span> : undefined
  }
  return (
    <>
      <Card title={words.lists.machines.title}>
        <OrderedRows
          label={words.lists.machines.title}
          rows={plan.machines.map((machine) => ({
            id: machine.id, name: machine.name, href: partHref('machines', machine.id), value: mend('machines', machine.id),
            under: `${words.counts.stations(machine.stations.length)} · ${words.counts.checks(plan.checks.filter(({ station }) => machine.stations.some(({ id }) => id === station)).length)}`,
          }))}
          onMove={mayEdit ? (from, to) => change({ ...plan, machines: moved(plan.machines, from, to) }) : undefined}
        />
        {mayEdit ? <LinkButton wide href="/menu/plan/new-machine">{words.typical}</LinkButton> : null}
        <AddPart draft={draft} list="machines" />
      </Card>
      <Card title={words.otherParts}>
        <Rows>
          <Row what={words.laboratory} value={mend('laboratory')} href={partHref('laboratory')} />
          {(['people', 'shifts', 'materials', 'methods', 'formulas', 'cautions'] as const).map((list) => <Row key={list} what={words.lists[list].title} value={mend(list) ?? (plan[list] ?? []).length} href={partHref(list)} />)}
        </Rows>
      </Card>
    </>
  )
}

const Revisions = ({ draft, when }: { draft: Draft; when(time: number): string }) => {
  const { lab, now } = useApp()
  const words = useWords().plan
  const { state, ledger } = lab.value
  const by = ({ id }: PlanInForce): string => {
    const line = ledger.line(id)
    const name = line?.person ? (draft.plan.people.find((it) => it.id === line.person)?.name ?? line.person) : ''
    return name ? words.by(name) : ''
  }
  return (
    <Card title={words.revisions}>
      <Rows label={words.revisions}>
        {[...state.plans.revisions].reverse().map((revision) => (
          <Row key={revision.id} what={revision.from > now.value ? words.coming(when(revision.from)) : words.since(when(revision.from))} under={by(revision)} href={`/menu/plan/revision/${revision.id}`} />
        ))}
      </Rows>
    </Card>
  )
}

const Files = ({ draft }: { draft: Draft }) => {
  const { router } = useApp()
  const words = useWords().plan
  const [problems, setProblems] = useState<readonly PlanProblem[] | 'notJson' | 'same'>()
  const [raw, setRaw] = useState<unknown>()
  const take = async (file: File): Promise<void> => {
    const read = readPlanFile(await file.text())
    if (read === undefined) return setProblems('notJson')
    setRaw(read)
    const parsed = parseDraft(read)
    if (!parsed.ok) return setProblems(parsed.problems)
    if (!planChanges(draft.latest.plan, parsed.plan).length) return setProblems('same')
    draft.change(parsed.plan)
    router.go('/menu/plan/review')
  }
  return (
    <Card title={words.files}>
      <LinkButton wide href="/menu/labels">{words.labels}</LinkButton>
      <Button wide onPress={() => saveFile('lab-plan.json', planFile(draft.latest.plan))}>{words.exportFile}</Button>
      {problems === 'notJson' || problems === 'same' ? <Banner kind={problems === 'same' ? 'plain' : 'stop'} title={problems === 'same' ? words.same : words.notJson} /> : problems ? (
        <Banner kind="stop" title={words.notAPlan}><ProblemList problems={problems} plan={raw} /></Banner>
      ) : null}
      {draft.mayEdit ? (
        <>
          <label class="button wide">
            {words.importFile}
            {/* Emptied afterwards: a browser says nothing when a file that was mended is chosen again. */}
            <input class="unseen" type="file" accept="application/json,.json" onChange={(event) => { const input = event.currentTarget; const [chosen] = input.files ?? []; if (chosen) void take(chosen).finally(() => { input.value = '' }) }} />
          </label>
          <p class="small quiet">{words.importMore}</p>
        </>
      ) : null}
      <a class="button wide" href="/api/lab-plan.schema.json" download="lab-plan.schema.json">{words.schema}</a>
      <p class="small quiet">{words.schemaMore}</p>
    </Card>
  )
}

