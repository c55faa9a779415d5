import { useRef, useState } from 'preact/hooks'
import type { StripCheck } from '../../plan/check.ts'
import { placeOf } from '../../plan/find.ts'
import { batchAt } from '../../projections/strips.ts'
import { wholeDensity } from '../../rounds/strip/auto-advance.ts'
import { stripFigures, type StripFigures } from '../../rounds/strip/figures.ts'
import { plainDensities } from '../../rounds/strip/strip-data.ts'
import { stripInFor, stripTimes } from '../../rounds/strip/times.ts'
import { parseKeyed, type KeyedProblem } from '../../rounds/keyed.ts'
import { useApp, useWords } from '../app-context.ts'
import { buzz } from '../buzz.ts'
import { timeText } from '../format.ts'
import { Button } from '../parts/button.tsx'
import { Backward, Forward } from '../parts/icons.tsx'
import { NumberPad } from '../parts/number-pad.tsx'
import { Sheet } from '../parts/sheet.tsx'
import { SavingProblem } from '../saving-problem.tsx'
import { Screen } from '../screen.tsx'
import { EntryTools } from '../round/entry-tools.tsx'
import type { FlowProps } from '../round/flow.ts'
import { Where } from '../round/where.tsx'
import { CurveChart } from './curve-chart.tsx'
import { ImportSheet } from './import-sheet.tsx'
import { densityDecimals, pointsOfStrip } from './points.ts'
import { useStripDraft, type StripDraft } from './strip-draft.ts'
import { StripTimesSheet } from './strip-times-sheet.tsx'
import './strip.css'

/** Beyond these no densitometer reads. */
const shown = { low: -0.1, high: 6 }

type Densities = { [step: string]: { value: number; keyed: string } }

/** `under`: the step under the thumb, which is drawn only once it is whole. */
const densitiesOf = (check: StripCheck, { keyed }: StripDraft, decimals: number, under?: number): Densities =>
  Object.fromEntries(
    check.steps!.flatMap(({ name }, index) => {
      // Left half keyed: `0.` is not nought.
      if (!/\.\d/.test(keyed[index]!) || (index === under && wholeDensity(keyed[index]!, decimals) === undefined)) return []
      const parsed = parseKeyed(keyed[index]!, { decimals: Math.max(decimals, 3), ...shown })
      return parsed.ok ? [[name, { value: parsed.value, keyed: parsed.keyed }]] : []
    }),
  )

/**
 * A control strip, step by step off the densitometer. Its own curve grows while it is keyed, which shows a slip at once; reference, earlier strips and
 * verdict come when it is saved, so that nothing is copied.
 */
export const StripStepsEntry = ({ check, half, asked, answering, meta, due, onHalf, onNoted }: FlowProps<StripCheck>) => {
  const { lab, plan, phone, rounds } = useApp()
  const words = useWords()
  const say = words.strip
  const [draft, keep] = useStripDraft(check)
  const [at, setAt] = useState<number>()
  const [problem, setProblem] = useState<KeyedProblem>()
  const [open, setOpen] = useState<'import' | 'times'>()
  /** What stands, ahead of what is drawn: a keyboard wedge types faster than that. */
  const standing = useRef<{ draft: StripDraft; here: number }>(undefined)
  const [asking, setAsking] = useState<{ missing: string[] } | { refusal: NonNullable<StripFigures['refusal']> }>()
  if (!draft) return <Screen title={check.name} back meta={meta} />

  const steps = check.steps!
  const decimals = densityDecimals(check)
  const { machine } = placeOf(plan.value!.plan, check.station)
  const run = lab.value.state.machines[machine.id]
  const read = rounds.noted.value[check.id] ?? phone.clock.now()
  const stripIn = draft.stripIn ?? stripInFor(run, machine, read)
  const strips = lab.value.state.strips[check.id]
  const batch = strips?.batches.findLast((it) => it.batch === draft.batch) ?? batchAt(strips, stripIn)

  const firstEmpty = draft.keyed.findIndex((text) => text === '')
  const here = Math.min(at ?? (firstEmpty < 0 ? steps.length - 1 : firstEmpty), steps.length - 1)
  const keyed = draft.keyed[here]!
  const densities = densitiesOf(check, draft, decimals)
  const drawn = densitiesOf(check, draft, decimals, here)
  const points = pointsOfStrip(check, plainDensities(drawn))
  const isLast = firstEmpty < 0 || (here === steps.length - 1)

  standing.current = { draft, here }
  const goTo = (step: number): void => {
    standing.current!.here = step
    setAt(step)
  }
  /** Puts a text at the step that stands and goes to another, or stays. */
  const put = (text: string, next?: number): void => {
    const { draft: before, here: step } = standing.current!
    const after = { ...before, keyed: before.keyed.with(step, text) }
    standing.current!.draft = after
    void keep(after)
    goTo(next ?? step)
  }
  const onward = (): number => {
    const { draft: now, here: step } = standing.current!
    const after = now.keyed.findIndex((text, index) => index > step && text === '')
    return after < 0 ? Math.min(step + 1, steps.length - 1) : after
  }
  const change = (given: string): string => {
    const { draft: now, here: step } = standing.current!
    const before = now.keyed[step]!
    setProblem(undefined)
    // A figure keyed at a step that has its density begins it anew.
    const text = given.length > before.length && wholeDensity(before, decimals) !== undefined ? given.slice(before.length) : given
    const whole = text.length === before.length - 1 ? undefined : wholeDensity(text, decimals)
    const parsed = whole === undefined ? undefined : parseKeyed(whole, { decimals, ...shown })
    if (parsed && !parsed.ok) {
      setProblem(parsed.problem)
      buzz('refused')
    }
    if (parsed?.ok) put(parsed.keyed, step === steps.length - 1 ? step : onward())
    else put(text)
    return standing.current!.draft.keyed[standing.current!.here]!
  }
  const enter = (): void => {
    const parsed = parseKeyed(keyed, { decimals, ...shown })
    if (keyed !== '' && !parsed.ok) {
      setProblem(parsed.problem)
      buzz('refused')
      return
    }
    if (isLast) return save()
    if (parsed.ok) put(parsed.keyed, onward())
    else goTo(here + 1)
  }
  const save = (sure: { missing?: boolean; refusal?: boolean } = {}): void => {
    const missing = steps.filter(({ name }) => densities[name] === undefined).map(({ name }) => name)
    if (missing.length === steps.length) {
      setProblem({ code: 'empty' })
      buzz('refused')
      return
    }
    if (missing.length && !sure.missing) return setAsking({ missing })
    const { refusal } = steps.some(({ logExposure }) => logExposure !== undefined) ? stripFigures(check, plainDensities(densities)) : {}
    if (refusal && !sure.refusal) return setAsking({ refusal })
    setAsking(undefined)
    const { developer } = stripTimes(run, machine, stripIn)
    const iso = (time: number): string => new Date(time).toISOString()
    void answering
      .strip(
        check,
        {
          densities, stripIn: iso(stripIn), ...(developer ? { bathTime: iso(developer.middle) } : {}), ...(batch ? { batch: batch.batch } : {}), ...(draft.from ? { from: draft.from } : {}),
        },
        batch?.aims,
      )
      .then((id) => (id ? keep({ ...draft, savedAs: id }) : undefined))
  }
  const step = steps[here]!
  const { timeZone } = plan.value!.plan
  return (
    <Screen title={check.name} back meta={meta} fills next={<Button kind="go" onPress={enter}>{isLast ? say.save : say.nextStep}</Button>}>
      <Where check={{ ...check, how: undefined }} asked={asked} />
      <SavingProblem of={answering.saving} />
      <CurveChart
        isLow
        strip={points}
        exposures={steps.flatMap(({ logExposure }) => (logExposure === undefined ? [] : [logExposure]))}
        here={step.logExposure}
        name={say.drawn(Object.keys(drawn).length, steps.length)}
      />
      <div class="strip-number">
        <button type="button" class="icon-button" aria-label={say.stepBefore} onClick={() => goTo(Math.max(0, here - 1))}><Backward /></button>
        <div>
          <p class="small">{say.step(step.name, here + 1, steps.length)}</p>
          <output class="keyed" aria-live="polite">{keyed || <span class="cursor" role="img" aria-label={say.empty} />}</output>
        </div>
        <button type="button" class="icon-button" aria-label={say.stepAfter} onClick={() => goTo(Math.min(steps.length - 1, here + 1))}><Forward /></button>
      </div>
      {problem ? <p class="problem" role="alert">{words.round.problems[problem.code](problem as never)}</p> : null}
      <NumberPad value={keyed} onChange={change} onEnter={enter} decimals={decimals} longest={5} names={words.pad} />
      <div class="strip-tools">
        <Button onPress={() => setOpen('import')}>{say.fromText}</Button>
        <Button onPress={() => setOpen('times')}>{say.times.button(timeText(stripIn, timeZone))}</Button>
      </div>
      <EntryTools check={check} half={half} onHalf={onHalf} due={due} answering={answering} onNoted={onNoted} />
      {open === 'import' ? (
        <ImportSheet
          steps={steps.map(({ name }) => name)}
          onClose={() => setOpen(undefined)}
          onTake={(byStep, from) => {
            void keep({ ...draft, from, keyed: steps.map(({ name }) => byStep[name]?.keyed ?? '') })
            setAt(steps.length - 1)
            setOpen(undefined)
          }}
        />
      ) : null}
      {open === 'times' ? (
        <StripTimesSheet
          machine={machine}
          stripIn={stripIn}
          read={read}
          batch={batch?.batch}
          batches={strips?.batches.map((it) => it.batch) ?? []}
          onChange={(change) => void keep({ ...draft, ...change })}
          onClose={() => setOpen(undefined)}
        />
      ) : null}
      {asking && 'missing' in asking ? (
        <Sheet title={say.missing.title} closeName={say.missing.back} onClose={() => { setAsking(undefined); setAt(steps.findIndex(({ name }) => name === asking.missing[0])) }}>
          <p>{say.missing.more(asking.missing.join(', '))}</p>
          <Button onPress={() => save({ missing: true })}>{say.missing.save}</Button>
        </Sheet>
      ) : null}
      {asking && 'refusal' in asking ? (
        <Sheet
          title={say.refused.title}
          closeName={say.refused.again}
          onClose={() => { setAsking(undefined); if (asking.refusal.step) setAt(steps.findIndex(({ name }) => name === asking.refusal.step)) }}
        >
          <p>{asking.refusal.step ? say.refused.step(asking.refusal.step) : say.refused.curve}</p>
          {asking.refusal.step ? null : <p class="small quiet">{words.bench.refusal(asking.refusal)}</p>}
          <p>{say.refused.out}</p>
          <Button onPress={() => save({ missing: true, refusal: true })}>{say.refused.keep}</Button>
        </Sheet>
      ) : null}
    </Screen>
  )
}
