import { useState } from 'preact/hooks'
import type { StripCheck } from '../../plan/check.ts'
import type { DataOf } from '../../record/kinds.ts'
import { batchByCrossover, batchByMean, batchByReference, stripsOf, type TextProblem } from '../../rounds/strip/new-batch.ts'
import { Refusal } from '../../science/refusal.ts'
import { useApp, useWords } from '../app-context.ts'
import { numberText } from '../format.ts'
import { Banner } from '../parts/banner.tsx'
import { Button } from '../parts/button.tsx'
import { Choices, Field } from '../parts/field.tsx'
import { Sheet } from '../parts/sheet.tsx'
import { SavingProblem } from '../saving-problem.tsx'
import { useSaving } from '../saving.ts'
import { useDates } from '../use-dates.ts'
import { pointsOfStrip } from './points.ts'
import { CurveChart } from './curve-chart.tsx'

type How = 'reference' | 'crossover' | 'mean'
type Batch = DataOf<'stripBatch'>
type Made = { batch: Batch; runs?: number } | { problem: string } | undefined

/** A new batch of strips: its name, and where its aims come from. */
export const BatchSheet = ({ check, onClose }: { check: StripCheck; onClose(): void }) => {
  const { lab } = useApp()
  const words = useWords()
  const say = words.strip.batches
  const { when } = useDates()
  const saving = useSaving()
  const strips = lab.value.state.strips[check.id]
  const before = strips?.batches.at(-1)
  const recent = strips?.recent ?? []
  const steps = check.steps!.map(({ name }) => name)
  const [how, setHow] = useState<How>(before ? 'crossover' : 'reference')
  const [name, setName] = useState('')
  const [texts, setTexts] = useState({ reference: '', correction: '', old: '', fresh: '' })
  const [picked, setPicked] = useState<readonly string[]>([])
  const [isAsked, setAsked] = useState(false)

  const problemText = (problem: TextProblem): string => (words.strip.problems[problem.code] as (it: unknown) => string)(problem)
  const made = ((): Made => {
    const one = (text: string): Made | { [step: string]: number } => {
      const read = stripsOf(text, steps)
      return read.ok ? read.strips[0]! : { problem: problemText(read.problem) }
    }
    const common = { check: check.id, batch: name.trim() }
    try {
      if (how === 'mean') {
        const chosen = recent.filter(({ id }) => picked.includes(id)).map(({ densities }) => densities)
        return chosen.length ? { batch: batchByMean({ ...common, strips: chosen }) } : undefined
      }
      if (how === 'reference') {
        if (!texts.reference.trim()) return undefined
        const reference = one(texts.reference)
        const correction = texts.correction.trim() ? one(texts.correction) : {}
        if (reference && 'problem' in reference) return reference as Made
        if (correction && 'problem' in correction) return correction as Made
        return { batch: batchByReference({ ...common, reference: reference as Record<string, number>, correction: correction as Record<string, number> }) }
      }
      if (!before || !texts.old.trim() || !texts.fresh.trim()) return undefined
      const old = stripsOf(texts.old, steps)
      const fresh = stripsOf(texts.fresh, steps)
      if (!old.ok) return { problem: problemText(old.problem) }
      if (!fresh.ok) return { problem: problemText(fresh.problem) }
      const { processRuns, ...batch } = batchByCrossover({ ...common, from: before, old: old.strips, fresh: fresh.strips })
      const runs = Object.values(processRuns)
      return { batch, runs: runs.reduce((worst, by) => (Math.abs(by) > Math.abs(worst) ? by : worst), 0) }
    } catch (thrown) {
      if (thrown instanceof Refusal) return { problem: words.bench.refusal(thrown) }
      throw thrown
    }
  })()
  const batch = made && 'batch' in made ? made.batch : undefined
  const save = async (): Promise<void> => {
    if (!batch || !name.trim()) return setAsked(true)
    if (await saving.save('stripBatch', batch)) onClose()
  }
  const field = (of: keyof typeof texts, label: string, hint?: string) => (
    <Field name={label} kind="long" hint={hint} value={texts[of]} onChange={(text) => setTexts({ ...texts, [of]: text })} />
  )
  return (
    <Sheet title={say.take} closeName={words.shell.close} onClose={onClose}>
      <Field name={say.name} value={name} problem={isAsked && !name.trim() ? say.nameMissing : undefined} onChange={setName} />
      <h3>{say.how}</h3>
      <Choices<How>
        name={say.how}
        value={how}
        onChange={setHow}
        of={[
          { value: 'reference', says: say.reference },
          ...(before ? [{ value: 'crossover' as const, says: say.crossover }] : []),
          ...(recent.length ? [{ value: 'mean' as const, says: say.fromStrips }] : []),
        ]}
      />
      {how === 'reference' ? <>{field('reference', say.referenceDensities, words.strip.import.hint)}{field('correction', say.correction)}</> : null}
      {how === 'crossover' ? <>{field('old', say.oldStrips, say.fewest)}{field('fresh', say.newStrips)}</> : null}
      {how === 'mean' ? (
        <fieldset class="choices">
          <legend>{say.pick}</legend>
          {recent.toReversed().map((it) => (
            <label key={it.id}>
              <input type="checkbox" checked={picked.includes(it.id)} onChange={() => setPicked(picked.includes(it.id) ? picked.filter((id) => id !== it.id) : [...picked, it.id])} />
              <span>{when(it.time)} · {it.verdict}</span>
            </label>
          ))}
        </fieldset>
      ) : null}
      {made && 'problem' in made ? <Banner kind="stop" title={made.problem} /> : null}
      {batch ? (
        <>
          <h3>{say.result}</h3>
          <CurveChart strip={pointsOfStrip(check, batch.aims)} reference={before && pointsOfStrip(check, before.aims)} name={say.result} />
          {made && 'runs' in made && made.runs !== undefined ? <p>{say.runs(`${made.runs > 0 ? '+' : ''}${numberText(made.runs, 3)}`)}</p> : null}
        </>
      ) : isAsked ? <p class="problem" role="alert">{say.noAims}</p> : null}
      <SavingProblem of={saving} />
      <Button kind="go" onPress={() => save()}>{say.save}</Button>
    </Sheet>
  )
}
