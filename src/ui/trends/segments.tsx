import { useId } from 'preact/hooks'

interface SegmentsProps<T extends string> {
  name: string
  of: readonly { value: T; says: string; isOpen?: boolean }[]
  value: T
  onChange(value: T): void
}

/** One of a few, side by side. */
export const Segments = <T extends string>({ name, of, value, onChange }: SegmentsProps<T>) => {
  const id = useId()
  return (
    <fieldset class="segments">
      <legend class="unseen">{name}</legend>
      {of.map((it) => (
        <label key={it.value}>
          <input type="radio" name={id} checked={it.value === value} disabled={it.isOpen === false} onChange={() => onChange(it.value)} />
          <span>{it.says}</span>
        </label>
      ))}
    </fieldset>
  )
}
