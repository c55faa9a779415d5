import { useState } from 'preact/hooks'
import { useWords } from '../app-context.ts'
import { Button } from '../parts/button.tsx'
import { Row, Rows } from '../parts/card.tsx'
import { Backward, Forward } from '../parts/icons.tsx'

export interface Ordered {
  id: string
  name: string
  under?: preact.ComponentChildren
  value?: preact.ComponentChildren
  href: string
}

/** A list of parts; their order is changed by buttons, as no gesture is needed anywhere. */
export const OrderedRows = ({ rows, label, onMove }: { rows: readonly Ordered[]; label: string; onMove?: ((from: number, to: number) => void) | undefined }) => {
  const words = useWords().plan
  const [isOrdering, setOrdering] = useState(false)
  return (
    <>
      {isOrdering && onMove ? (
        <ul class="rows" aria-label={label}>
          {rows.map(({ id, name }, index) => (
            <li key={id} class="order-line">
              <span>{name}</span>
              <button type="button" class="button upward" aria-label={words.up(name)} aria-disabled={index === 0 ? 'true' : undefined} onClick={() => index > 0 && onMove(index, index - 1)}><Backward /></button>
              <button type="button" class="button downward" aria-label={words.down(name)} aria-disabled={index === rows.length - 1 ? 'true' : undefined} onClick={() => index < rows.length - 1 && onMove(index, index + 1)}><Forward /></button>
            </li>
          ))}
        </ul>
      ) : (
        <Rows label={label}>{rows.map(({ id, name, under, value, href }) => <Row key={id} what={name} under={under} value={value} href={href} />)}</Rows>
      )}
      {onMove && rows.length > 1 ? <Button kind="plain" onPress={() => setOrdering(!isOrdering)}>{isOrdering ? words.orderDone : words.order}</Button> : null}
    </>
  )
}

export const moved = <T,>(list: readonly T[], from: number, to: number): T[] => {
  const rest = list.toSpliced(from, 1)
  return rest.toSpliced(to, 0, list[from]!)
}
