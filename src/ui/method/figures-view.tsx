import { useState } from 'preact/hooks'
import type { ReadingCheck } from '../../plan/check.ts'
import type { LabPlan, Method } from '../../plan/lab-plan.ts'
import { above, below } from '../../science/decimal.ts'
import { calculationById } from '../../science/catalogue.ts'
import { askedFields, curveField, type AskedField } from '../../rounds/method/asked.ts'
import { endPointsOf } from '../../rounds/method/curve.ts'
import { isUsable, titrantsNow } from '../../rounds/method/titrants.ts'
import { determine, together, writtenValue, type Determination } from '../../rounds/method/work-out.ts'
import { useApp, useWords } from '../app-context.ts'
import { decimalsOf, numberText } from '../format.ts'
import { headText } from '../value-text.ts'
import { Banner } from '../parts/banner.tsx'
import { Button } from '../parts/button.tsx'
import { Card } from '../parts/card.tsx'
import { Field } from '../parts/field.tsx'
import { Working } from '../parts/working.tsx'
import type { Answering } from '../round/answering.ts'
import { SavingProblem } from '../saving-problem.tsx'
import { Screen } from '../screen.tsx'
import { Segments } from '../trends/segments.tsx'
import { CurveEntry } from './curve-entry.tsx'
import { freshDetermination, type KeyedDetermination, type MethodDraft } from './draft.ts'
import { numberOf } from './parse.ts'
import { TitrantLines } from './titrant-lines.tsx'

const most = 6

interface FiguresProps {
  plan: LabPlan
  check: ReadingCheck
  method: Method
  meta: string
  draft: MethodDraft
  onKeep(draft: MethodDraft): void
  answering: Answering
}

/** What the burette and the meter said, determination by determination, and what they come to together. */
export const FiguresView = ({ plan, check, method, meta, draft, onKeep, answering }: FiguresProps) => {
  const { lab, phone } = useApp()
  const words = useWords()
  const say = words.method
  const [at, setAt] = useState(draft.determinations.length - 1)
  const [tried, setTried] = useState(false)
  const calculation = method.calculation ? calculationById(method.calculation) : undefined
  const fields = askedFields(method, check, calculation)
  const titrants = titrantsNow(lab.value.state, plan, method, phone.clock.now())
  const areUsable = titrants.every(isUsable)
  const decimals = decimalsOf(check.step)
  const text = (value: number, more = 0): string => numberText(value, decimals + more)
  const unit = check.unit === '1' ? '' : check.unit
  const sample = method.given?.['sampleMillilitres']
  const worked = draft.determinations.map((it) => workedOut(it))
  const values = worked.flatMap((it) => (it?.ok ? [it.value] : []))
  const all = values.length === draft.determinations.length && values.length > 0 ? together(values, method) : undefined
  const written = all && writtenValue(all.value, check)
  const isOutside = written !== undefined && (below(written.value, check.instrument.low) || above(written.value, check.instrument.high))
  const keyed = draft.determinations[at]!
  const one = worked[at]
  const change = (next: KeyedDetermination): void => onKeep({ ...draft, determinations: draft.determinations.with(at, next) })

  function workedOut(it: KeyedDetermination): Determination | undefined {
    const numbers: Record<string, number> = {}
    for (const { name, field } of fields) {
      const value = numberOf(it.keyed[name])
      if (value === undefined && !(it.keyed[name] ?? '').trim() && field.preset !== undefined) continue
      if (value === undefined || problemOf({ name, field }, it) !== undefined) return undefined
      numbers[name] = value
    }
    if (method.endPoint === 'curve') {
      const end = endPointsOf(it.points, typeof sample === 'number' ? sample : undefined)[it.endPoint]
      if (!end.ok) return undefined
      numbers[curveField] = end.millilitres
    }
    return determine({ check, method, calculation, titrants, keyed: numbers })
  }
  function problemOf({ name, field }: AskedField, it: KeyedDetermination): string | undefined {
    const typed = (it.keyed[name] ?? '').trim()
    if (!typed) return field.preset === undefined && tried ? say.keyed.missing : undefined
    const value = numberOf(typed)
    if (value === undefined) return say.keyed.notANumber
    const low = field.atLeast ?? field.above ?? Number.NEGATIVE_INFINITY
    const high = field.atMost ?? field.below ?? Number.POSITIVE_INFINITY
    const isOut = value < low || value > high || (field.above !== undefined && value <= field.above)
    return isOut ? say.keyed.range(String(low), String(high)) : undefined
  }
  const add = (): void => {
    onKeep({ ...draft, determinations: [...draft.determinations, freshDetermination()] })
    setAt(draft.determinations.length)
  }
  const save = (): void => {
    if (all?.taken === 'thirdNeeded') return add()
    if (!all || !written || isOutside || !areUsable) {
      setTried(true)
      return
    }
    const last = worked.findLast((it) => it?.ok)
    void answering.reading(check, {
      ...written, secondLook: false,
      working: {
        calculation: method.calculation ?? 'none',
        inputs: { method: method.id, determinations: worked.flatMap((it) => (it?.ok ? [it.inputs] : [])), ...(titrants.length ? { titrants: titrants.map(({ check: { id }, value, standardisedAt }) => ({ check: id, value, standardisedAt })) } : {}), ...(method.endPoint ? { curves: draft.determinations.map(({ points, endPoint }) => ({ points, endPoint })) } : {}) },
        result: { value: all.value, values, taken: all.taken, range: all.range, ...(last?.ok ? last.result : {}) },
      },
    })
  }
  const note = !all ? undefined : all.taken === 'single' ? say.single : all.taken === 'mean' ? say.repeats(text(all.range, 1), text(all.limit, 1)) : all.taken === 'median' ? say.median(text(all.range, 1), text(all.limit, 1)) : undefined
  return (
    <Screen
      title={method.name}
      back
      meta={`${meta} · ${say.figures}`}
      next={<Button kind="go" notYet={!areUsable ? say.titrant.blocked : undefined} onPress={save}>{written && all?.taken !== 'thirdNeeded' ? say.save(`${written.keyed} ${unit}`) : all ? say.third : say.notYet}</Button>}
    >
      <TitrantLines titrants={titrants} />
      <SavingProblem of={answering.saving} />
      {draft.determinations.length > 1 ? (
        <Segments name={say.determinationChoice} of={draft.determinations.map((_, index) => ({ value: String(index), says: String(index + 1) }))} value={String(at)} onChange={(it) => setAt(Number(it))} />
      ) : null}
      <Card title={say.determination(at + 1)} beside={one?.ok ? <strong>{text(one.value, 1)} {unit}</strong> : undefined}>
        {method.endPoint === 'curve' ? <CurveEntry keyed={keyed} sampleMillilitres={typeof sample === 'number' ? sample : undefined} onChange={change} /> : null}
        {fields.map((it) => (
          <Field
            key={it.name}
            name={it.label ?? headText(it.field.says)}
            unit={it.field.unit === '1' ? undefined : it.field.unit}
            kind="decimal"
            value={keyed.keyed[it.name] ?? ''}
            problem={problemOf(it, keyed)}
            onChange={(value) => change({ ...keyed, keyed: { ...keyed.keyed, [it.name]: value } })}
          />
        ))}
        {one && !one.ok ? <p class="problem" role="alert">{words.bench.refusal(one.refusal)}</p> : null}
        {draft.determinations.length > 1 ? (
          <Button
            kind="plain"
            onPress={() => {
              onKeep({ ...draft, determinations: draft.determinations.toSpliced(at, 1) })
              setAt(0)
            }}
          >
            {say.drop}
          </Button>
        ) : null}
      </Card>
      <div role="status" class="stack">
        {all && written ? (
          <Card title={say.result}>
            <p class="result-number">{written.keyed}<span class="unit"> {unit}</span></p>
            {note ? <p class="small quiet">{note}</p> : null}
            {all.taken === 'thirdNeeded' ? <Banner kind="warn" title={say.thirdNeeded(text(all.range, 1), text(all.limit, 1))} /> : null}
            {isOutside ? <Banner kind="stop" title={say.outside(text(check.instrument.low), text(check.instrument.high), unit)} /> : null}
            {one?.ok && one.steps.length ? <details><summary>{say.working}</summary><Working steps={one.steps} name={say.working} /></details> : null}
          </Card>
        ) : null}
      </div>
      <div class="save-row">
        {draft.determinations.length < most && all?.taken !== 'thirdNeeded' ? (
          <Button onPress={add}>
            {draft.determinations.length === 1 ? say.another : draft.determinations.length === 2 ? say.third : say.determination(draft.determinations.length + 1)}
          </Button>
        ) : null}
        {method.steps.length ? <Button onPress={() => onKeep({ ...draft, step: 0 })}>{say.stepsAgain}</Button> : null}
      </div>
    </Screen>
  )
}
