import type { ComponentChildren } from 'preact'
import { useId, useState } from 'preact/hooks'
import './field.css'

interface FieldProps {
  name: ComponentChildren
  unit?: string | undefined
  hint?: ComponentChildren
  problem?: string | undefined
  /** What is wrong is not said before the field was left. */
  patient?: boolean | undefined
  value: string
  onChange(value: string): void
  kind?: 'text' | 'decimal' | 'password' | 'long' | 'digits' | 'date'
  autocomplete?: string
  /** Id of a list of what may be meant. */
  list?: string | undefined
}

/** A problem that is held back until the part of the form that it is about was left. */
export const useLeft = (problem: string | undefined, patient = false): { said: string | undefined; leave(): void } => {
  const [isLeft, setLeft] = useState(false)
  return { said: patient && !isLeft ? undefined : problem, leave: () => setLeft(true) }
}

/** A labelled input with its unit, its hint and what is wrong with it. */
export const Field = ({ name, unit, hint, problem: found, patient, value, onChange, kind = 'text', autocomplete = 'off', list }: FieldProps) => {
  const id = useId()
  const { said: problem, leave } = useLeft(found, patient)
  const described = [hint ? `${id}-hint` : '', problem ? `${id}-problem` : ''].filter(Boolean).join(' ') || undefined
  const shared = {
    id,
    value,
    autocomplete,
    'aria-describedby': described,
    'aria-invalid': problem ? true : undefined,
    onInput: (event: { currentTarget: { value: string } }) => onChange(event.currentTarget.value),
  }
  return (
    <div class="field" onFocusOut={leave}>
      <label for={id}>{name}</label>
      <div class="control">
        {kind === 'long' ? (
          <textarea rows={4} {...shared} />
        ) : kind === 'password' ? (
          <input type="password" {...shared} />
        ) : kind === 'date' ? (
          <input type="date" {...shared} />
        ) : (
          <input type="text" list={list} inputMode={kind === 'decimal' ? 'decimal' : kind === 'digits' ? 'numeric' : 'text'} {...shared} />
        )}
        {unit ? <span class="unit">{unit}</span> : null}
      </div>
      {hint ? <span class="small quiet" id={`${id}-hint`}>{hint}</span> : null}
      {problem ? <span class="small problem" id={`${id}-problem`}>{problem}</span> : null}
    </div>
  )
}

/** One of a few, each line a target. */
export const Choices = <T extends string>({ name, of, value, onChange }: { name: string; of: readonly { value: T; says: ComponentChildren }[]; value: T | undefined; onChange(value: T): void }) => {
  const id = useId()
  return (
    <fieldset class="choices">
      <legend class="unseen">{name}</legend>
      {of.map((choice) => (
        <label key={choice.value}>
          <input type="radio" name={id} checked={choice.value === value} onChange={() => onChange(choice.value)} />
          <span>{choice.says}</span>
        </label>
      ))}
    </fieldset>
  )
}
