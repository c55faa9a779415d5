import type { ComponentChildren } from 'preact'
import { useApp, useWords } from '../app-context.ts'
import { Banner, Empty } from '../parts/banner.tsx'
import { LinkButton } from '../parts/button.tsx'
import { Screen } from '../screen.tsx'
import { PlanTree } from './plan-tree.tsx'
import { useDraft, type Draft } from './use-draft.ts'
import './plan.css'

interface Drawn {
  title: string
  meta?: string | undefined
  /** Instead of the way to what waits to be signed. */
  next?: ComponentChildren
  body: ComponentChildren
}

/** A screen of the plan: what is edited in the middle, at the desk the whole plan beside it, and what waits to be signed under the thumb. */
export const PlanScreen = ({ draw, isReview }: { draw(draft: Draft): Drawn; isReview?: boolean }) => {
  const { lab } = useApp()
  const all = useWords()
  const words = all.plan
  const draft = useDraft()
  if (!lab.value.state.plans.revisions.length) return <Screen title={words.title} back><Empty title={all.now.noPlan.title}>{all.now.noPlan.more}</Empty></Screen>
  if (!draft) return <Screen title={words.title} back />
  const { title, meta, next, body } = draw(draft)
  const onward = draft.changes.length && draft.mayEdit && !isReview ? <LinkButton kind="go" href="/menu/plan/review">{words.draft.look}</LinkButton> : null
  return (
    <Screen title={title} back meta={meta} next={next ?? onward}>
      <div class="plan-desk">
        <PlanTree draft={draft} />
        <div class="stack">
          {draft.mayEdit ? null : <Banner title={words.lookOnly} />}
          {body}
        </div>
      </div>
    </Screen>
  )
}
