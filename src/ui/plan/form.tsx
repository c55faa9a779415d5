import { useId, useState } from 'preact/hooks'
import { tidy } from '../../science/decimal.ts'
import { isObject } from '../../plan/same-value.ts'
import type { PlanProblem } from '../../plan/plan-problems.ts'
import type { WrittenPlan } from '../../plan/written-plan.ts'
import { useWords } from '../app-context.ts'
import { edgeUnits } from '../bench/edge-units.ts'
import { parseNumber } from '../bench/form.ts'
import { Button } from '../parts/button.tsx'
import { FieldGroup } from '../parts/field-group.tsx'
import { Field, useLeft } from '../parts/field.tsx'
import { pathText, valueAt, type Path } from './at.ts'
import type { Json, PartField, PartFields, Source } from './field.ts'
import { inputsOf, optionsOf, unbroken, type Option } from './sources.ts'
import { valueText } from './value-text.ts'
import './plan.css'
import '../bench/bench.css'

export interface FormGiven {
  plan: WrittenPlan
  problems: readonly PlanProblem[]
  /** Unit that the check names, for its limits. */
  checkUnit: string | undefined
  readOnly: boolean
  /** A part that was just added: a field complains when it was left. */
  patient?: boolean
  onChange(path: Path, value: Json | undefined): void
}

interface At extends FormGiven {
  path: Path
}

/** The fields of one part, made from their descriptions. Every change goes into the draft at once; what is wrong stands under its field. */
export const PartForm = ({ fields, value, ...at }: At & { fields: PartFields; value: unknown }) => (
  <>
    {Object.entries(fields).map(([name, field]) => (
      <OneField key={name} field={field} value={isObject(value) ? value[name] : undefined} {...at} path={[...at.path, name]} />
    ))}
  </>
)

const useProblem = ({ path, problems }: At): string | undefined => {
  const { problem } = useWords().plan
  const at = pathText(path)
  const own = problems.find((it) => it.path === at)
  return own && problem(own)
}

const OneField = ({ field, value, ...at }: At & { field: PartField; value: unknown }) => {
  const { said, leave } = useLeft(useProblem(at), at.patient)
  return <div class="through" onFocusOut={leave}><Entry field={field} value={value} problem={said} {...at} /></div>
}

const Entry = ({ field, value, problem, ...at }: At & { field: PartField; value: unknown; problem: string | undefined }) => {
  const all = useWords()
  const words = all.plan
  const name = words.nameOf(field.says)
  const help = words.helpOf(field.says)
  const label = <>{name}{field.optional && !field.needed ? <span class="small quiet"> · {words.optional}</span> : null}</>
  const set = (next: Json | undefined): void => at.onChange(at.path, next)
  switch (field.kind) {
    case 'text':
      return <TextField label={label} help={help} problem={problem} field={field} value={value} set={set} at={at} />
    case 'number':
      return <NumberField label={label} help={help} problem={problem} unit={field.unit} value={value} set={set} at={at} />
    case 'wallTime':
      return <TextField label={label} help={help} problem={problem} field={{}} value={value} set={set} at={at} />
    case 'date':
      return <TextField label={label} help={help} problem={problem} field={{ optional: true, date: true }} value={value} set={set} at={at} />
    case 'instant':
      return <Still label={name} text={valueText(at.plan, field, value, undefined, all)} />
    case 'zone':
      return <Select label={label} help={help} problem={problem} value={String(value ?? '')} readOnly={at.readOnly} options={zones(String(value ?? '')).map((zone) => ({ value: zone, says: zone.replaceAll('_', ' ') }))} onChange={set} />
    case 'choice':
      return (
        <Select
          label={label} help={help} problem={problem} value={value === undefined ? '' : String(value)} readOnly={at.readOnly} empty={field.optional ? words.none : words.choose}
          options={field.of.map((it) => ({ value: String(it), says: words.choice(field.says, String(it)) }))}
          onChange={(chosen) => set(chosen === '' ? undefined : field.of.find((it) => String(it) === chosen))}
        />
      )
    case 'pick':
      return <Select label={label} help={help} problem={problem} value={value === undefined ? '' : String(value)} readOnly={at.readOnly} empty={field.optional ? words.none : words.choose} options={withOwn(optionsOf(at.plan, field.from), value)} onChange={(chosen) => set(chosen || undefined)} />
    case 'flag':
      return (
        <div class="field">
          <Tick says={name} checked={value === true} readOnly={at.readOnly} onChange={(checked) => set(checked ? true : field.optional ? undefined : false)} />
          {help ? <span class="small quiet">{help}</span> : null}
        </div>
      )
    case 'some':
    case 'pickSome': {
      const chosen = Array.isArray(value) ? (value as string[]) : []
      const options = field.kind === 'some' ? field.of.map((it) => ({ value: it, says: words.choice(field.says, it) })) : chosen.reduce<readonly Option[]>(withOwn, optionsOf(at.plan, field.from))
      return (
        <Group legend={name} problem={problem}>
          <div class="ticks">
            {options.map((it) => (
              // In the order of the list, whatever the order of tapping.
              <Tick key={it.value} says={unbroken(it.says)} checked={chosen.includes(it.value)} readOnly={at.readOnly} onChange={(checked) => set(options.map((each) => each.value).filter((each) => (each === it.value ? checked : chosen.includes(each))))} />
            ))}
          </div>
        </Group>
      )
    }
    case 'group':
      if (field.optional && value === undefined) return at.readOnly ? null : <Button onPress={() => set(field.fresh ?? {})}>{words.addGroup(name)}</Button>
      return (
        <Group legend={name} help={help} problem={problem}>
          <PartForm fields={field.fields} value={value} {...at} />
          {field.optional && !at.readOnly ? <Button kind="plain" onPress={() => set(undefined)}>{words.removeGroup(name)}</Button> : null}
        </Group>
      )
    case 'variant':
      return <VariantField legend={name} help={help} problem={problem} field={field} value={value} set={set} at={at} />
    case 'list':
      return <ListField legend={name} help={help} problem={problem} field={field} value={value} set={set} at={at} />
    case 'table':
      return <TableField legend={name} help={help} problem={problem} value={value} set={set} at={at} />
  }
}

interface Drawn {
  help: string | undefined
  problem: string | undefined
  value: unknown
  set(value: Json | undefined): void
  at: At
}

const withOwn = (options: readonly Option[], value: unknown): readonly Option[] =>
  // What is named and is not there is shown, so that it is seen before it is replaced.
  typeof value === 'string' && value && !options.some((it) => it.value === value) ? [...options, { value, says: value }] : options

const zones = (value: string): string[] => {
  const known = Intl.supportedValuesOf('timeZone')
  return known.includes(value) || !value ? known : [value, ...known]
}

const Group = ({ legend, help, problem, children }: { legend: string; help?: string | undefined; problem: string | undefined; children: preact.ComponentChildren }) => (
  <FieldGroup kind="form-group plan-group" name={legend}>
    {help ? <p class="small quiet">{help}</p> : null}
    {problem ? <p class="small problem" role="status">{problem}</p> : null}
    {children}
  </FieldGroup>
)

const TextField = ({ label, help, problem, field, value, set, at }: Drawn & { label: preact.ComponentChildren; field: { optional?: true; long?: true; date?: true; suggest?: Source } }) => {
  const text = typeof value === 'string' ? value : value === undefined || value === null ? '' : String(value as number)
  const change = (next: string): void => set(next === '' && field.optional ? undefined : next)
  const options = field.suggest ? optionsOf(at.plan, field.suggest) : []
  if (at.readOnly) return <Still label={label} text={saysOf(options, text)} />
  if (field.suggest) return <SuggestedField label={label} help={help} problem={problem} options={options} value={text} onChange={change} />
  return <Field name={label} hint={help} problem={problem} kind={field.long ? 'long' : field.date ? 'date' : 'text'} value={text} onChange={change} />
}

const saysOf = (options: readonly Option[], value: string): string => options.find((it) => it.value === value)?.says ?? value

/** What may be meant is offered and shown by its name; what else is keyed stands as it is. */
const SuggestedField = ({ label, help, problem, options, value, onChange }: Pick<Drawn, 'help' | 'problem'> & { label: preact.ComponentChildren; options: readonly Option[]; value: string; onChange(value: string): void }) => {
  const id = useId()
  const [keyed, setKeyed] = useState(() => saysOf(options, value))
  const change = (next: string): void => {
    setKeyed(next)
    onChange(options.find((it) => it.says === next)?.value ?? next)
  }
  return (
    <>
      <Field name={label} hint={help} problem={problem} list={id} value={keyed} onChange={change} />
      <datalist id={id}>{options.map((it) => <option key={it.value} value={it.says} />)}</datalist>
    </>
  )
}

const figures = 10

/** Keeps what was keyed as it was keyed; the plan gets the number, in the units of its file. */
const NumberField = ({ label, help, problem, unit, value, set, at }: Drawn & { label: preact.ComponentChildren; unit: string | { ofCheck: true } | undefined }) => {
  const edge = typeof unit === 'string' ? edgeUnits(at.plan.units)(unit) : undefined
  const written = (number: number): string => String(Number((edge ? edge.toShown(number) : number).toPrecision(figures)))
  const shown = value === undefined || value === null ? '' : typeof value === 'number' ? written(value) : String(value as string)
  const [keyed, setKeyed] = useState<string>()
  const read = (text: string): Json | undefined => {
    if (text.trim() === '') return undefined
    const number = parseNumber(text.trim())
    // What is no number is kept as it was keyed: the schema then names it.
    return number === undefined ? text : edge ? tidy(edge.fromShown(number)) : number
  }
  // Something else set the value meanwhile: accepted limits, another unit.
  const text = keyed !== undefined && read(keyed) === value ? keyed : shown
  const unitText = typeof unit === 'object' ? at.checkUnit : edge?.shown
  if (at.readOnly) return <Still label={label} text={[shown, unitText === '1' ? undefined : unitText].filter(Boolean).join(' ')} />
  return (
    <Field
      name={label} hint={help} problem={problem} kind="decimal" unit={unitText === '1' || unitText === '' ? undefined : unitText} value={text}
      onChange={(next) => {
        setKeyed(next)
        set(read(next))
      }}
    />
  )
}

const Still = ({ label, text }: { label: preact.ComponentChildren; text: string }) => (
  <div class="field still">
    <span class="small quiet">{label}</span>
    <span>{text || '–'}</span>
  </div>
)

export const Select = ({ label, help, problem, value, options, empty, readOnly, onChange }: {
  label: preact.ComponentChildren; help?: string | undefined; problem?: string | undefined; value: string; options: readonly { value: string; says: string }[]; empty?: string; readOnly?: boolean; onChange(value: string): void
}) => {
  const id = useId()
  if (readOnly) return <Still label={label} text={options.find((it) => it.value === value)?.says ?? value} />
  return (
    <div class="field">
      <label for={id}>{label}</label>
      <select id={id} value={value} aria-invalid={problem ? true : undefined} aria-describedby={problem || help ? `${id}-more` : undefined} onChange={(event) => onChange(event.currentTarget.value)}>
        {empty !== undefined ? <option value="">{empty}</option> : null}
        {options.map((it) => <option key={it.value} value={it.value}>{it.says}</option>)}
      </select>
      {problem || help ? <span id={`${id}-more`} class={problem ? 'small problem' : 'small quiet'}>{problem ?? help}</span> : null}
    </div>
  )
}

export const Tick = ({ says, checked, readOnly, onChange }: { says: preact.ComponentChildren; checked: boolean; readOnly?: boolean; onChange(checked: boolean): void }) => (
  <label class="tick">
    <input type="checkbox" checked={checked} disabled={readOnly} onChange={(event) => onChange(event.currentTarget.checked)} />
    <span>{says}</span>
  </label>
)

const VariantField = ({ legend, help, problem, field, value, set, at }: Drawn & { legend: string; field: Extract<PartField, { kind: 'variant' }> }) => {
  const words = useWords().plan
  const kind = isObject(value) && typeof value['kind'] === 'string' ? value['kind'] : ''
  return (
    <Group legend={legend} help={help} problem={problem}>
      <Select
        label={<span class="unseen">{legend}</span>} value={kind} readOnly={at.readOnly} options={Object.keys(field.of).map((it) => ({ value: it, says: words.choice(field.says, it) }))}
        // What both shapes have is carried over: the grace stays when the interval becomes once a shift.
        onChange={(chosen) => set({ ...(field.fresh[chosen] as { [key: string]: Json }), ...shared(field.of[chosen] ?? {}, value), kind: chosen })}
      />
      <PartForm key={kind} fields={field.of[kind] ?? {}} value={value} {...at} />
    </Group>
  )
}

const shared = (fields: PartFields, value: unknown): { [key: string]: Json } => (isObject(value) ? (Object.fromEntries(Object.entries(value).filter(([key]) => key in fields)) as { [key: string]: Json }) : {})

const ListField = ({ legend, help, problem, field, value, set, at }: Drawn & { legend: string; field: Extract<PartField, { kind: 'list' }> }) => {
  const words = useWords().plan
  const list = Array.isArray(value) ? (value as Json[]) : []
  // Lines are told apart by their place: a line taken out redraws those after it, with what they hold.
  const [turn, setTurn] = useState(0)
  if (field.optional && value === undefined && at.readOnly) return null
  return (
    <Group legend={legend} help={help} problem={problem}>
      {list.map((entry, index) => (
        <div class="form-line" key={`${turn}-${index}`} role="group" aria-label={words.lineName(index + 1)}>
          <PartForm fields={field.of} value={entry} {...at} checkUnit={unitOfLine(entry) ?? at.checkUnit} path={[...at.path, index]} />
          {at.readOnly ? null : (
            <Button kind="plain" onPress={() => { const rest = list.toSpliced(index, 1); setTurn(turn + 1); set(field.optional && !rest.length ? undefined : rest) }}>{words.removeLine(index + 1)}</Button>
          )}
        </div>
      ))}
      {at.readOnly ? null : <Button onPress={() => set([...list, structuredClone(field.fresh)])}>{words.addLine}</Button>}
    </Group>
  )
}

/** A strip figure names its own unit. */
const unitOfLine = (entry: unknown): string | undefined => (isObject(entry) && typeof entry['unit'] === 'string' ? entry['unit'] : undefined)

const TableField = ({ legend, help, problem, value, set, at }: Drawn & { legend: string }) => {
  const words = useWords().plan
  const [pairs, setPairs] = useState<readonly (readonly [string, string])[]>(() => (isObject(value) ? Object.entries(value).map(([key, it]) => [key, String(it as string | number)] as const) : []))
  const change = (next: readonly (readonly [string, string])[]): void => {
    setPairs(next)
    const named = next.filter(([key]) => key.trim() !== '')
    set(named.length ? Object.fromEntries(named.map(([key, text]) => [key.trim(), parseNumber(text.trim()) ?? text])) : undefined)
  }
  // Keyed by the inputs of the calculation that is named beside it.
  const options = inputsOf(valueAt(at.plan, [...at.path.slice(0, -1), 'calculation']))
  if (at.readOnly) return pairs.length ? <Group legend={legend} problem={undefined}>{pairs.map(([key, text]) => <Still key={key} label={saysOf(options, key)} text={text} />)}</Group> : null
  return (
    <Group legend={legend} help={help} problem={problem}>
      {pairs.map(([key, text], index) => (
        <div class="form-line" key={index} role="group" aria-label={words.lineName(index + 1)}>
          <SuggestedField label={words.tableName} help={undefined} problem={undefined} options={options} value={key} onChange={(next) => change(pairs.with(index, [next, text]))} />
          <Field name={words.tableValue} kind="decimal" value={text} onChange={(next) => change(pairs.with(index, [key, next]))} />
          <Button kind="plain" onPress={() => change(pairs.toSpliced(index, 1))}>{words.removeLine(index + 1)}</Button>
        </div>
      ))}
      <Button onPress={() => change([...pairs, ['', '']])}>{words.addLine}</Button>
    </Group>
  )
}
