import type { Working } from '../../corrections/sealed-dose.ts'
import { useApp, useWords } from '../app-context.ts'
import { Sheet } from '../parts/sheet.tsx'
import { shortText } from '../units.ts'
import { namesIn } from './sentence.ts'

/** How the number came about, line by line, and by which calculation; the bench works the same one out. */
export const WorkingSheet = ({ working, onClose }: { working: Working; onClose(): void }) => {
  const { plan } = useApp()
  const words = useWords()
  const named = (text: string): string => namesIn(text, plan.value!.plan, words)
  return (
    <Sheet title={words.exception.working} closeName={words.shell.close} onClose={onClose}>
      <ol class="working">
        {working.steps.map((step, index) => (
          <li key={index} class={typeof step.value === 'number' ? undefined : 'in-words'}>
            <span>{named(step.says)}</span>
            <strong>{typeof step.value === 'number' ? shortText(step.value, Math.abs(step.value) < 1 ? 4 : 2) : step.value} {step.unit === '1' ? '' : step.unit}</strong>
            {step.formula ? <code>{named(step.formula)}</code> : null}
          </li>
        ))}
      </ol>
      <a class="button wide" href={`/bench/${working.calculation}`}>{words.exception.atBench}</a>
    </Sheet>
  )
}
