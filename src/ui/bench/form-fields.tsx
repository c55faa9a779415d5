import type { Field, Fields, GroupField, ListField, TableField } from '../../science/field.ts'
import { useWords } from '../app-context.ts'
import { Button } from '../parts/button.tsx'
import { FieldGroup } from '../parts/field-group.tsx'
import { Field as Input } from '../parts/field.tsx'
import { blankField, plainNumbers, type EdgeUnits, type Keyed, type KeyedGroup, type KeyedPair, type Problems } from './form.ts'
import { headText, namePlain } from '../value-text.ts'

interface FormProps {
  edge: EdgeUnits
  problems: Problems
  /** Sentence of a refusal, by the path of its field. */
  refused: { path: string; says: string } | undefined
}

/** The inputs of a set of fields, made from their descriptions. */
export const FormFields = ({ fields, exactlyOne, values, path, onChange, ...form }: FormProps & { fields: Fields; exactlyOne?: GroupField['exactlyOne']; values: KeyedGroup; path: string; onChange(values: KeyedGroup): void }) => {
  const words = useWords().bench
  const alternatives = new Set(exactlyOne?.flat())
  const input = (name: string, field: Field) => (
    <FormField
      key={name}
      name={name}
      field={field}
      optional={field.optional === true || alternatives.has(name)}
      value={values[name] ?? ''}
      path={path ? `${path}.${name}` : name}
      onChange={(value) => onChange({ ...values, [name]: value })}
      {...form}
    />
  )
  return (
    <>
      {Object.entries(fields).filter(([name]) => !alternatives.has(name)).map(([name, field]) => input(name, field))}
      {exactlyOne?.map((set) => (
        <FieldGroup kind="form-group" name={words.oneOf} key={set.join()}>
          {set.map((name) => input(name, fields[name]!))}
        </FieldGroup>
      ))}
    </>
  )
}

interface FormFieldProps extends FormProps {
  name: string
  field: Field
  optional: boolean
  value: Keyed
  path: string
  onChange(value: Keyed): void
}

const FormField = ({ name, field, optional, value, path, onChange, ...form }: FormFieldProps) => {
  const words = useWords().bench
  const problem = form.problems[path] ? words.problems[form.problems[path]] : form.refused?.path === path ? form.refused.says : undefined
  const label = (
    <>
      {headText(field.says || namePlain(name))}
      {optional ? <span class="small quiet"> · {words.optional}</span> : null}
    </>
  )
  switch (field.kind) {
    case 'number': {
      const unit = form.edge(field.unit).shown
      return <Input name={label} kind="decimal" unit={unit === '1' ? undefined : unit} problem={problem} value={value as string} onChange={onChange} />
    }
    case 'text':
      return <Input name={label} problem={problem} value={value as string} onChange={onChange} />
    case 'choice':
      return <Choice label={label} options={field.of.map((it) => [it, namePlain(it)])} problem={problem} value={value as string} onChange={onChange} />
    case 'flag':
      return <Choice label={label} options={[['yes', words.yes], ['no', words.no]]} problem={problem} value={value as string} onChange={onChange} />
    case 'list':
      if (plainNumbers(field) && field.of.kind === 'number') {
        const unit = form.edge(field.of.unit).shown
        const bad = problem ?? (Object.keys(form.problems).some((it) => it.startsWith(`${path}[`)) ? words.problems.notANumber : undefined)
        return <Input name={label} kind="long" unit={unit === '1' ? undefined : unit} hint={words.pasteNumbers} problem={bad} value={value as string} onChange={onChange} />
      }
      return <ListFields legend={label} field={field} value={value as Keyed[]} path={path} onChange={onChange} {...form} />
    case 'table':
      return <TableFields legend={label} field={field} value={value as KeyedPair[]} path={path} onChange={onChange} {...form} />
    case 'group':
      return (
        <FieldGroup kind="form-group" name={label}>
          <FormFields fields={field.fields} {...(field.exactlyOne ? { exactlyOne: field.exactlyOne } : {})} values={value as KeyedGroup} path={path} onChange={onChange} {...form} />
        </FieldGroup>
      )
  }
}

const Choice = ({ label, options, problem, value, onChange }: { label: preact.ComponentChildren; options: readonly (readonly [string, string])[]; problem: string | undefined; value: string; onChange(value: string): void }) => {
  const words = useWords().bench
  return (
    <div class="field">
      <label>
        {label}
        <select value={value} aria-invalid={problem ? true : undefined} onChange={(event) => onChange(event.currentTarget.value)}>
          <option value="">{words.choose}</option>
          {options.map(([key, says]) => <option key={key} value={key}>{says}</option>)}
        </select>
      </label>
      {problem ? <span class="small problem">{problem}</span> : null}
    </div>
  )
}

const ListFields = ({ legend, field, value, path, onChange, ...form }: FormProps & { legend: preact.ComponentChildren; field: ListField; value: Keyed[]; path: string; onChange(value: Keyed): void }) => {
  const words = useWords().bench
  const { of } = field
  return (
    <FieldGroup kind="form-group" name={legend}>
      {value.map((entry, index) => {
        const change = (next: Keyed): void => onChange(value.with(index, next))
        const at = `${path}[${index}]`
        return (
          <div class="form-line" key={index}>
            {of.kind === 'group' ? (
              <FormFields fields={of.fields} {...(of.exactlyOne ? { exactlyOne: of.exactlyOne } : {})} values={entry as KeyedGroup} path={at} onChange={change} {...form} />
            ) : (
              <FormField name="" field={of} optional={false} value={entry} path={at} onChange={change} {...form} />
            )}
            <Button kind="plain" onPress={() => onChange(value.toSpliced(index, 1))}>{words.removeRow(index + 1)}</Button>
          </div>
        )
      })}
      <Button onPress={() => onChange([...value, blankField(of, form.edge)])}>{words.addRow}</Button>
    </FieldGroup>
  )
}

const TableFields = ({ legend, field, value, path, onChange, ...form }: FormProps & { legend: preact.ComponentChildren; field: TableField; value: KeyedPair[]; path: string; onChange(value: Keyed): void }) => {
  const words = useWords().bench
  return (
    <FieldGroup kind="form-group" name={legend}>
      {value.map((pair, index) => {
        const problem = form.problems[`${path}[${index}].name`]
        return (
          <div class="form-line" key={index}>
            <Input name={words.name} problem={problem ? words.problems[problem] : undefined} value={pair.name} onChange={(name) => onChange(value.with(index, { ...pair, name }))} />
            <FormField name={pair.name} field={field.of} optional={false} value={pair.value} path={`${path}.${pair.name}`} onChange={(next) => onChange(value.with(index, { ...pair, value: next }))} {...form} />
            <Button kind="plain" onPress={() => onChange(value.toSpliced(index, 1))}>{words.removeRow(index + 1)}</Button>
          </div>
        )
      })}
      <Button onPress={() => onChange([...value, { name: '', value: blankField(field.of, form.edge) }])}>{words.addRow}</Button>
    </FieldGroup>
  )
}
