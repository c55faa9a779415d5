import type { LookCheck } from '../../plan/check.ts'
import { useWords } from '../app-context.ts'
import { SavingProblem } from '../saving-problem.tsx'
import { Screen } from '../screen.tsx'
import { EntryTools } from './entry-tools.tsx'
import type { FlowProps } from './flow.ts'
import { Where } from './where.tsx'

/** Something to be looked at: two answers, each as large as a hand. */
export const LookEntry = ({ check, half, asked, answering, meta, due, onHalf, onNoted }: FlowProps<LookCheck>) => {
  const words = useWords().round.verdict
  return (
    <Screen title={check.name} back meta={meta} fills>
      <Where check={check} asked={asked} />
      <SavingProblem of={answering.saving} />
      <div class="looks">
        <button type="button" class="right" onClick={() => void answering.look(check, true)}>
          <strong>{words.right}</strong>
          <span>{check.right}</span>
        </button>
        <button type="button" class="wrong" onClick={() => void answering.look(check, false)}>
          <strong>{words.notRight}</strong>
          <span>{check.wrong}</span>
        </button>
      </div>
      <EntryTools check={check} due={due} answering={answering} half={half} onHalf={onHalf} onNoted={onNoted} />
    </Screen>
  )
}
