import { planChanges } from '../../plan/changes.ts'
import { useApp, useWords } from '../app-context.ts'
import { saveFile } from '../menu/save-file.ts'
import { Banner, Empty } from '../parts/banner.tsx'
import { Button } from '../parts/button.tsx'
import { Card } from '../parts/card.tsx'
import { useDates } from '../use-dates.ts'
import { ChangeList } from './change-list.tsx'
import { planFile } from './plan-file.ts'
import { PlanScreen } from './plan-screen.tsx'

/** One revision of the plan: by whom, from when, why, and what it changed. */
export const RevisionScreen = ({ entry }: { entry: string }) => {
  const { lab, now, router } = useApp()
  const all = useWords()
  const words = all.plan
  const { when } = useDates()
  return (
    <PlanScreen
      draw={(draft) => {
        const { revisions } = lab.value.state.plans
        const index = revisions.findIndex(({ id }) => id === entry)
        const revision = revisions[index]
        if (!revision) return { title: words.revisions, body: <Empty title={all.shell.notFound.title} /> }
        const before = revisions[index - 1]
        const line = lab.value.ledger.line(revision.id)
        const from = when(revision.from)
        const who = line?.person ? (revision.plan.people.find(({ id }) => id === line.person)?.name ?? line.person) : undefined
        const why = line?.kind === 'plan' ? line.data.why : undefined
        return {
          title: revision.from > now.value ? words.coming(from) : words.since(from),
          meta: who ? words.by(who) : undefined,
          body: (
            <>
              {why ? <Banner title={why} /> : null}
              {before ? <ChangeList before={before.plan} after={revision.plan} changes={planChanges(before.plan, revision.plan)} /> : <Banner title={words.firstRevision} />}
              <Card>
                {line ? <p class="small quiet">{line.recvAt === undefined ? words.notSent : words.sent} · {words.sealed(line.h.slice(0, 8))}</p> : null}
                <Button wide onPress={() => saveFile('lab-plan.json', planFile(revision.plan))}>{words.saveRevision}</Button>
                {draft.mayEdit && revision.id !== draft.latest.id ? (
                  <>
                    <Button wide onPress={() => { draft.rebase(revision.plan); router.go('/menu/plan/review') }}>{words.backTo}</Button>
                    <p class="small quiet">{words.backToMore}</p>
                  </>
                ) : null}
              </Card>
            </>
          ),
        }
      }}
    />
  )
}
