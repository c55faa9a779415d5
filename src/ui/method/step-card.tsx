import type { Method } from '../../plan/lab-plan.ts'
import { useApp, useWords } from '../app-context.ts'
import { Button } from '../parts/button.tsx'
import { Card } from '../parts/card.tsx'
import { Screen } from '../screen.tsx'
import { useWakeLock } from '../wake-lock.ts'
import type { MethodDraft } from './draft.ts'
import { StepTimer } from './step-timer.tsx'

/** One step, large enough to be read from where the burette stands. */
export const StepCard = ({ method, meta, draft, onKeep }: { method: Method; meta: string; draft: MethodDraft; onKeep(draft: MethodDraft): void }) => {
  const { phone } = useApp()
  const words = useWords().method
  useWakeLock(true)
  const step = method.steps[draft.step]!
  const isLast = draft.step === method.steps.length - 1
  const go = (to: number): void => onKeep({ ...draft, step: to })
  return (
    <Screen title={method.name} back meta={`${meta} · ${words.step(draft.step + 1, method.steps.length)}`} next={<Button kind="go" onPress={() => go(draft.step + 1)}>{isLast ? words.toFigures : words.nextStep}</Button>}>
      <Card>
        <p class="step-says">{step.says}</p>
        {step.seconds ? <StepTimer seconds={step.seconds} since={draft.timers[draft.step]} onStart={() => onKeep({ ...draft, timers: { ...draft.timers, [draft.step]: phone.clock.now() } })} /> : null}
      </Card>
      <div class="save-row">
        {draft.step > 0 ? <Button onPress={() => go(draft.step - 1)}>{words.stepBefore}</Button> : null}
        {isLast ? null : <Button onPress={() => go(method.steps.length)}>{words.toFigures}</Button>}
      </div>
    </Screen>
  )
}
