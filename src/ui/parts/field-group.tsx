import type { ComponentChildren } from 'preact'
import { useId } from 'preact/hooks'

/** Fields under one name. A `fieldset` is not laid out as a grid by every browser: one of them draws its border only as far as the name. */
export const FieldGroup = ({ name, kind, children }: { name: ComponentChildren; kind: string; children: ComponentChildren }) => {
  const id = useId()
  return (
    <div class={kind} role="group" aria-labelledby={id}>
      <strong id={id}>{name}</strong>
      {children}
    </div>
  )
}
