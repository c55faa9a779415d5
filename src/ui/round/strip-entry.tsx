import { useState } from 'preact/hooks'
import type { StripCheck } from '../../plan/check.ts'
import { parseKeyed, type KeyedProblem } from '../../rounds/keyed.ts'
import { useWords } from '../app-context.ts'
import { buzz } from '../buzz.ts'
import { decimalsOf, numberText } from '../format.ts'
import { BathGauge } from '../parts/bath-gauge.tsx'
import { Button } from '../parts/button.tsx'
import { NumberPad } from '../parts/number-pad.tsx'
import { SavingProblem } from '../saving-problem.tsx'
import { Screen } from '../screen.tsx'
import { EntryTools } from './entry-tools.tsx'
import type { FlowProps } from './flow.ts'
import { figuresOf, keptFigures } from './strip-figures.ts'
import { Where } from './where.tsx'

/** Densitometers and log exposures lie within these. */
const shown = { low: -6, high: 6 }

/** A control strip, figure by figure off the densitometer; judged when the last is in. */
export const StripEntry = ({ check, half, asked, answering, meta, due, onHalf, onNoted }: FlowProps<StripCheck>) => {
  const words = useWords()
  const { check: say, problems } = words.round
  const [problem, setProblem] = useState<KeyedProblem>()
  const { done, keyed } = figuresOf(half.keyed)
  const at = Math.min(done.length, check.figures.length - 1)
  const figure = check.figures[at]!
  const decimals = decimalsOf(figure.step)
  const last = at === check.figures.length - 1
  const change = (next: string): void => {
    setProblem(undefined)
    onHalf({ ...half, keyed: keptFigures(done, next) })
  }
  const enter = (): void => {
    const parsed = parseKeyed(keyed, { decimals, ...shown })
    if (!parsed.ok) {
      setProblem(parsed.problem)
      buzz('refused')
      return
    }
    const all = [...done, parsed.keyed]
    if (!last) {
      onHalf({ ...half, keyed: keptFigures(all, '') })
      return
    }
    void answering.strip(check, { densities: Object.fromEntries(check.figures.map(({ figure: name }, index) => [name, { value: Number(all[index]), keyed: all[index]! }])) })
  }
  return (
    <Screen title={check.name} back meta={meta} fills next={<Button kind="go" onPress={enter}>{last ? say.savePlain : say.nextFigure}</Button>}>
      <Where check={check} asked={asked} />
      <SavingProblem of={answering.saving} />
      <div class="reading">
        <BathGauge limits={figure.limits} name={say.gauge(words.marks.figure(figure.figure), undefined)} />
        <div class="number">
          <p><strong>{words.marks.figure(figure.figure)}</strong> <span class="quiet">{say.figure(at + 1, check.figures.length)}</span></p>
          <output class="keyed" aria-live="polite">{keyed || <span class="cursor" role="img" aria-label={say.empty} />}</output>
          <p>{figure.unit === '1' ? '' : figure.unit} <span class="quiet">{say.aim(numberText(figure.limits.aim, decimals))}</span></p>
        </div>
      </div>
      {problem ? <p class="problem" role="alert">{problems[problem.code](problem as never)}</p> : null}
      <NumberPad value={keyed} onChange={change} onEnter={enter} decimals={decimals} minus={figure.limits.aim < 0} names={words.pad} />
      <EntryTools check={check} due={due} answering={answering} half={half} onHalf={onHalf} onNoted={onNoted} />
    </Screen>
  )
}
