import { useState } from 'preact/hooks'
import { inWords } from '../../plan/in-words.ts'
import type { DisplayUnits, LabPlan, Person } from '../../plan/lab-plan.ts'
import { newId } from '../../plan/new-id.ts'
import { parsePlan, type PlanProblem } from '../../plan/plan-problems.ts'
import { firstPlan, typicalShifts } from '../../plan/template/first-plan.ts'
import { useApp, useWords } from '../app-context.ts'
import { BareScreen } from '../enrol/bare-screen.tsx'
import { Banner } from '../parts/banner.tsx'
import { Button } from '../parts/button.tsx'
import { Card } from '../parts/card.tsx'
import { Choices, Field } from '../parts/field.tsx'
import { SavingProblem } from '../saving-problem.tsx'
import { useSaving } from '../saving.ts'
import { Select } from './form.tsx'
import { MachineForm } from './machine-form.tsx'
import { freshMachine, readMachine, usualSpeed, type MachineKeyed } from './machine-wanted.ts'
import { ProblemList } from './problem-list.tsx'
import { useNames } from './use-names.ts'

const steps = ['place', 'units', 'machine', 'people'] as const
type Metric = 'metric' | 'us'
const unitsOf: Readonly<Record<Metric, DisplayUnits>> = {
  metric: { temperature: '°C', volume: 'L', mass: 'g', length: 'm' },
  us: { temperature: '°F', volume: 'US gal', mass: 'oz', length: 'ft' },
}
const shortestPin = 4

/** From nothing to a plan of one's own machine in four steps; afterwards the labels and the first round. */
export const FirstLaboratory = ({ me, begin, onBack }: { me: Person; begin(plan: LabPlan): Promise<boolean>; onBack(): void }) => {
  const { phone, person, router } = useApp()
  const all = useWords()
  const words = all.plan.first
  const saving = useSaving()
  const [at, setAt] = useState(0)
  const [name, setName] = useState('')
  const [zone, setZone] = useState(() => Intl.DateTimeFormat().resolvedOptions().timeZone)
  const [metric, setMetric] = useState<Metric>('metric')
  const [length, setLength] = useState<DisplayUnits['length']>('ft')
  const [machine, setMachine] = useState<MachineKeyed>()
  const [others, setOthers] = useState<readonly string[]>([''])
  const [pin, setPin] = useState('')
  const [problems, setProblems] = useState<readonly PlanProblem[]>([])
  const [busy, setBusy] = useState(false)
  const [tried, setTried] = useState(false)
  const say = useNames()
  const units: DisplayUnits = { ...unitsOf[metric], length }
  const keyed = machine ?? freshMachine(words.machineName, units)
  const { wanted, bad } = readMachine(keyed, units)
  const step = steps[at]!
  const lacking = step === 'place' ? (name.trim() ? undefined : words.needed) : step === 'machine' ? (wanted ? undefined : words.lacking(bad)) : step === 'people' ? (/^\d+$/.test(pin) && pin.length >= shortestPin ? undefined : words.pinShort) : undefined

  const make = async (): Promise<void> => {
    if (!wanted || busy) return
    const taken = new Set<string>([me.id])
    const people = others.map((it) => it.trim()).filter(Boolean).map((it) => {
      const id = newId(it, taken, 'person')
      taken.add(id)
      return { id, name: it, role: 'operator' as const }
    })
    const parsed = parsePlan(firstPlan({
      name: name.trim(), timeZone: zone, units, people: [{ ...me, role: 'supervisor' }, ...people], shifts: inWords(typicalShifts, say), emergency: { calls: [], eyewash: words.notSaid, assembly: words.notSaid }, machine: wanted,
    }, say))
    if (!parsed.ok) return setProblems(parsed.problems)
    setBusy(true)
    try {
      await phone.pins.choose(me.id, pin)
      if (!(await begin(parsed.plan))) return
      person.value = me.id
      router.go('/menu/first', 'replace')
    } finally {
      setBusy(false)
    }
  }
  const onward = (): Promise<void> | undefined => {
    if (lacking) return undefined
    scrollTo(0, 0)
    if (at === steps.length - 1) return make()
    setTried(false)
    setAt(at + 1)
    return undefined
  }
  return (
    <BareScreen title={words.titles[step]} next={<Button kind="go" notYet={busy ? all.shell.loading : lacking} onTooEarly={() => setTried(true)} onPress={onward}>{at < steps.length - 1 ? words.next : words.make}</Button>}>
      <ol class="stepper" aria-label={words.stepsName}>
        {[...steps, 'labels', 'round'].map((it, index) => <li key={it} class={index < at ? 'done' : undefined} aria-current={index === at ? 'step' : undefined}><span class="unseen">{words.step(index + 1)}</span></li>)}
      </ol>
      <SavingProblem of={saving} />
      {problems.length ? <Banner kind="stop" title={all.plan.review.problems}><ProblemList problems={problems} plan={undefined} /></Banner> : null}
      {step === 'place' ? (
        <Card>
          <Field name={all.plan.nameOf('laboratoryName')} problem={lacking} patient={!tried} value={name} onChange={setName} />
          <Select label={all.plan.nameOf('timeZone')} help={all.plan.helpOf('timeZone')} value={zone} options={[...new Set([zone, ...Intl.supportedValuesOf('timeZone')])].map((it) => ({ value: it, says: it.replaceAll('_', ' ') }))} onChange={setZone} />
        </Card>
      ) : null}
      {step === 'units' ? (
        <>
          <p>{words.unitsMore}</p>
          <Choices<Metric> name={all.plan.nameOf('units')} value={metric} of={[{ value: 'metric', says: '°C, L, g' }, { value: 'us', says: '°F, US gal, oz' }]} onChange={(it) => { setMetric(it); setMachine(undefined) }} />
          <Choices<'ft' | 'm'> name={all.plan.nameOf('unitsLength')} value={length as 'ft' | 'm'} of={[{ value: 'ft', says: words.feet }, { value: 'm', says: words.metres }]} onChange={(it) => { setLength(it); setMachine(machine && { ...machine, speed: usualSpeed({ ...units, length: it }), path: {} }) }} />
        </>
      ) : null}
      {step === 'machine' ? <MachineForm keyed={keyed} units={units} patient={!tried} onChange={setMachine} /> : null}
      {step === 'people' ? (
        <>
          <Card title={words.operators}>
            <p class="small quiet">{words.operatorsMore(me.name)}</p>
            {others.map((other, index) => <Field key={index} name={words.operator(index + 1)} value={other} onChange={(next) => setOthers(others.with(index, next))} />)}
            <Button onPress={() => setOthers([...others, ''])}>{all.plan.lists.people.add}</Button>
          </Card>
          <Card title={words.pin(me.name)}>
            <Field name={all.enrol.who.pin} kind="digits" hint={all.enrol.who.newPinHint} problem={lacking} patient={!tried} value={pin} onChange={(it) => setPin(it.replace(/\D/g, '').slice(0, 12))} />
          </Card>
        </>
      ) : null}
      <Button kind="plain" onPress={() => (at === 0 ? onBack() : setAt(at - 1))}>{all.shell.back}</Button>
    </BareScreen>
  )
}
